using System.Collections.Immutable;
using Sequencer.Language.Programs;
using Sequencer.Language.Syntax;
using Sequencer.Language.Units;

namespace Sequencer.Language.Binding;

/// <summary>Groups, latches, interlocks, permissives and trips; null where a part was wrong.</summary>
internal sealed class ProtectionBinder
{
    private readonly BindingContext _context;
    private readonly AmountBinder _amounts;
    private readonly DeclarationBinder _declarations;

    public ProtectionBinder(BindingContext context, AmountBinder amounts, DeclarationBinder declarations)
    {
        _context = context;
        _amounts = amounts;
        _declarations = declarations;
    }

    public static ProtectionGroup Bind(GroupSyntax syntax, LinePlace place) => new(syntax.Name.Text, syntax.Title.Text, place.At(syntax));

    public Latch? Bind(LatchSyntax syntax, LinePlace place)
    {
        Condition? set = Condition(syntax.Set, place);
        Condition? clear = Condition(syntax.Clear, place);
        return set is null || clear is null
            ? null
            : new Latch(syntax.Name.Text, syntax.Description.Text, set, clear, syntax.Retained, place.At(syntax));
    }

    public PublishedFact? Bind(FactSyntax syntax, LinePlace place) => Condition(syntax.When, place) is { } condition
        ? new PublishedFact(syntax.Name.Text, syntax.Description.Text, condition, place.At(syntax))
        : null;

    public Interlock? Bind(InterlockSyntax syntax, LinePlace place)
    {
        ILookup<bool, WordSyntax> names = syntax.Outputs.ToLookup(name => _context.Symbols.Find(name.Text)?.Kind == SymbolKind.AnalogueOutput);
        ImmutableArray<Output>? outputs = Outputs([.. names[false]], place);
        ImmutableArray<AnalogueOutput> analogues = [.. names[true].Select(name => _declarations.ResolveAnalogueOutput(name, place)).OfType<AnalogueOutput>()];
        Condition? condition = Condition(syntax.Condition, place);
        InterlockForm form = syntax.Form;
        if (form == InterlockForm.Unless && syntax.Delays is not { On: null, Off: null } && condition is not null)
        {
            // The delays are those of the block, so the condition is turned into what blocks.
            (form, condition) = (InterlockForm.While, new Negation(condition, condition.Span));
        }

        condition = Delayed(condition, syntax.Delays, place);
        Condition? release = _declarations.Conditions.BindOptional(syntax.Release, place);
        string? group = Group(syntax.Group, place);
        if (syntax.Group is not null && !syntax.NeedsReset)
        {
            _context.Report(GuardDiagnostics.GroupWithoutReset(place.At(syntax.Group), syntax.Name.Text));
        }

        return outputs is null || condition is null || (release is null && syntax.Release is not null)
            ? null
            : new Interlock(syntax.Name.Text, syntax.Title.Text, outputs.Value, form, condition, release, syntax.NeedsReset, group, place.At(syntax)) { Analogues = analogues };
    }

    public Exclusion? Bind(ExclusionSyntax syntax, LinePlace place)
    {
        ImmutableArray<Output>? outputs = Outputs(syntax.Outputs, place);
        Duration? between = _amounts.TimeOrNothing(syntax.Between, place);
        if (syntax.Outputs.Length == 1)
        {
            _context.Report(NameDiagnostics.OneExclusive(place.At(syntax.Outputs[0])));
        }

        return outputs is null || between is null ? null : new Exclusion(syntax.Name.Text, syntax.Title.Text, outputs.Value, between.Value, place.At(syntax));
    }

    public Permissive? Bind(PermissiveSyntax syntax, LinePlace place)
    {
        ImmutableArray<Output>? outputs = Outputs(syntax.Outputs, place);
        Condition? condition = Condition(syntax.Condition, place);
        Duration? patience = _amounts.Time(syntax.Patience, place);
        return outputs is null || condition is null || (patience is null && syntax.Patience is not null)
            ? null
            : new Permissive(syntax.Name.Text, syntax.Title.Text, outputs.Value, condition, patience, Reactions.Of(syntax.Reaction, Reaction.Alarm), place.At(syntax));
    }

    public Trip? Bind(TripSyntax syntax, LinePlace place)
    {
        BadSignal bad = syntax.IfBad?.Text switch
        {
            "alarm" => BadSignal.Alarm,
            "hold" => BadSignal.Hold,
            _ => BadSignal.Trip,
        };
        string? group = Group(syntax.Group, place);
        return Delayed(Condition(syntax.Condition, place), syntax.Delays, place) is { } condition
            ? new Trip(syntax.Name.Text, syntax.Title.Text, condition, Reactions.Of(syntax.Reaction, Reaction.Hold), bad, group, place.At(syntax))
            : null;
    }

    private Condition? Condition(ExpressionSyntax expression, LinePlace place) => _declarations.Conditions.Bind(expression, place);

    /// <summary>The condition with its on-delay inside its off-delay.</summary>
    public Condition? Delayed(Condition? condition, DelaysSyntax delays, LinePlace place)
    {
        Duration? on = _amounts.Time(delays.On, place);
        Duration? off = _amounts.Time(delays.Off, place);
        if (condition is not null && on is { } lasting)
        {
            condition = new StaysFact(condition, lasting, false, condition.Span);
        }

        return condition is not null && off is { } lingering ? new LingersFact(condition, lingering, condition.Span) : condition;
    }

    private string? Group(WordSyntax? name, LinePlace place) => name is null
        ? null
        : _context.Symbols.Resolve(name, place, symbol => symbol.Kind == SymbolKind.Group, "a group of protections")?.Name;

    private ImmutableArray<Output>? Outputs(ImmutableArray<WordSyntax> names, LinePlace place)
    {
        ImmutableArray<Output>.Builder outputs = ImmutableArray.CreateBuilder<Output>();
        HashSet<string> seen = new(StringComparer.Ordinal);
        foreach (WordSyntax name in names)
        {
            if (!seen.Add(name.Text))
            {
                _context.Report(NameDiagnostics.ListedTwice(place.At(name), name.Text));
            }
            else if (_declarations.ResolveOutput(name, place) is { } output)
            {
                outputs.Add(output);
            }
        }

        return outputs.Count == names.Length ? outputs.ToImmutable() : null;
    }
}
