using Sequencer.Language.Programs;
using Sequencer.Language.Syntax;
using Sequencer.Language.Units;
using Sequencer.Text;

namespace Sequencer.Language.Binding;

/// <summary>Overrides: of what, for how long, by whom.</summary>
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

        Duration? most = _amounts.Time(syntax.AtMost, place);
        if (most is { } time && time.Milliseconds > Longest.Milliseconds)
        {
            _context.Report(GuardDiagnostics.OverrideTooLong(place.At(syntax.AtMost), Longest));
        }

        return symbol is null || most is null
            ? null
            : new Override(symbol.Name, most.Value, syntax.Role.Text, syntax.Reason.Text, place.At(syntax));
    }
}
