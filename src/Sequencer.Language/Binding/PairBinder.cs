using Sequencer.Language.Programs;
using Sequencer.Language.Syntax;
using Sequencer.Language.Units;

namespace Sequencer.Language.Binding;

/// <summary>Pairs of devices: alike, each with a confirmation that tells of its failure.</summary>
internal sealed class PairBinder
{
    private readonly BindingContext _context;
    private readonly AmountBinder _amounts;
    private readonly DeclarationBinder _declarations;

    public PairBinder(BindingContext context, AmountBinder amounts, DeclarationBinder declarations)
    {
        _context = context;
        _amounts = amounts;
        _declarations = declarations;
    }

    public DutyPair? Bind(PairSyntax syntax, LinePlace place)
    {
        Output? first = _declarations.ResolveOutput(syntax.First, place);
        Output? second = _declarations.ResolveOutput(syntax.Second, place);
        Duration? within = _amounts.Time(syntax.Within, place);
        if (syntax.Duty.Text != syntax.First.Text && syntax.Duty.Text != syntax.Second.Text)
        {
            _context.Report(GuardDiagnostics.DutyOutsidePair(place.At(syntax.Duty), syntax.Name.Text));
            return null;
        }

        if (first is null || second is null || within is null)
        {
            return null;
        }

        if (first.Tag == second.Tag)
        {
            _context.Report(NameDiagnostics.ListedTwice(place.At(syntax.Second), second.Tag));
            return null;
        }

        if (Differ(first, second) is { } difference)
        {
            _context.Report(GuardDiagnostics.UnlikePair(place.At(syntax.Second), first, second, difference));
            return null;
        }

        foreach ((Output member, WordSyntax word) in new[] { (first, syntax.First), (second, syntax.Second) })
        {
            if (member.Confirmation is null)
            {
                _context.Report(GuardDiagnostics.PairWithoutConfirmation(place.At(word), member));
                return null;
            }
        }

        return new DutyPair(
            syntax.Name.Text, syntax.Title.Text, first, second, syntax.Duty.Text == first.Tag, within.Value, syntax.Rotates, place.At(syntax));
    }

    private static string? Differ(Output first, Output second) =>
        first.Kind != second.Kind ? "one is a valve, the other a motor"
        : first.Delivery?.Reagent.Name != second.Delivery?.Reagent.Name || first.Delivery?.LitresPerSecond != second.Delivery?.LitresPerSecond
            ? "they do not deliver the same"
        : first.Safe.Last || second.Safe.Last || first.Safe.Value || second.Safe.Value || first.Safe.While is not null || second.Safe.While is not null
            ? "at rest both must be off, or both would be on together"
        : null;
}
