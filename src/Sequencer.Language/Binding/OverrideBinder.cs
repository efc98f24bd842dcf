using Sequencer.Language.Programs;
using Sequencer.Language.Syntax;
using Sequencer.Language.Units;
using Sequencer.Text;

namespace Sequencer.Language.Binding;

/// <summary>Overrides and calibrations: of what, for how long, by whom.</summary>
internal sealed class OverrideBinder
{
    /// <summary>One shift: whoever takes over must decide anew (common practice, no source).</summary>
    private static readonly Duration Longest = new(8 * 3_600_000);

    private readonly BindingContext _context;
    private readonly AmountBinder _amounts;
    private readonly Dictionary<string, SourceSpan> _known = new(StringComparer.Ordinal);

    public OverrideBinder(BindingContext context, AmountBinder amounts)
    {
        _context = context;
        _amounts = amounts;
    }

    public Override? Bind(OverrideSyntax syntax, LinePlace place)
    {
        SourceSpan at = place.At(syntax.Protection);
        Symbol? symbol = _context.Symbols.Resolve(
            syntax.Protection, place, found => found.Kind is SymbolKind.Interlock or SymbolKind.Trip, "an interlock or a trip");
        if (symbol?.Syntax is TripSyntax { Reaction.Text: "emergency" })
        {
            _context.Report(GuardDiagnostics.OverrideOfEmergency(at, symbol));
        }
        else if (symbol?.Syntax is ExclusionSyntax)
        {
            _context.Report(GuardDiagnostics.OverrideOfExclusion(at, symbol));
        }
        else if (symbol is not null && !_known.TryAdd(symbol.Name, at))
        {
            _context.Report(GuardDiagnostics.OverriddenTwice(at, symbol.Name, _known[symbol.Name]));
        }

        if (syntax.AtMost is null)
        {
            _context.Report(GuardDiagnostics.OverrideWithoutEnd(at, syntax.Protection.Text));
            return null;
        }

        Duration? most = Time(syntax.AtMost, place);
        return symbol is null || most is null
            ? null
            : new Override(symbol.Name, most.Value, syntax.Role.Text, syntax.Reason.Text, place.At(syntax));
    }

    public Calibration? Bind(CalibrateSyntax syntax, LinePlace place, DeclarationBinder declarations)
    {
        Duration? most = Time(syntax.AtMost, place);
        AnalogueInput? input = declarations.ResolveReading(syntax.Signal, place);
        if (input is not null && QualifiedName.IsForeign(input.Tag))
        {
            _context.Report(CountDiagnostics.CalibratedElsewhere(place.At(syntax.Signal), input.Tag));
            return null;
        }

        if (input is not null && !_known.TryAdd(input.Tag, place.At(syntax.Signal)))
        {
            _context.Report(GuardDiagnostics.OverriddenTwice(place.At(syntax.Signal), input.Tag, _known[input.Tag]));
        }

        return input is null || most is null ? null : new Calibration(input, most.Value, syntax.Role.Text, syntax.Reason.Text, place.At(syntax));
    }

    private Duration? Time(AmountSyntax syntax, LinePlace place)
    {
        Duration? most = _amounts.Time(syntax, place);
        if (most is { } time && time.Milliseconds > Longest.Milliseconds)
        {
            _context.Report(GuardDiagnostics.OverrideTooLong(place.At(syntax), Longest));
        }

        return most;
    }
}
