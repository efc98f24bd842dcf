using Sequencer.Language.Programs;
using Sequencer.Language.Syntax;
using Sequencer.Language.Units;

namespace Sequencer.Language.Binding;

/// <summary>A dose by amount: of what, how much, in proportion to what.</summary>
internal sealed class AmountDoseBinder
{
    private readonly BindingContext _context;
    private readonly AmountBinder _amounts;
    private readonly DeclarationBinder _declarations;
    private readonly DoseBinder _doses;

    public AmountDoseBinder(BindingContext context, AmountBinder amounts, DeclarationBinder declarations, DoseBinder doses)
    {
        _context = context;
        _amounts = amounts;
        _declarations = declarations;
        _doses = doses;
    }

    /// <summary>Null where a part was wrong.</summary>
    public AmountDoseAction? Bind(AmountDoseSyntax syntax, LinePlace place)
    {
        Output? output = _doses.Output(syntax.Name, place);
        LiteralQuantity? amount = Volume(syntax.Amount, place);
        LiteralQuantity? maximum = Volume(syntax.Maximum, place);
        Duration? pulse = _doses.Pulse(syntax.Pulse, place);
        LiteralQuantity? per = Per(syntax.Per, place);
        Quantity? of = Of(syntax, place);
        if (output is null || amount is null || (syntax.Per is not null && (maximum is null || per is null || of is null)))
        {
            return null;
        }

        if (of is TotalQuantity && syntax.Pulse is null)
        {
            _context.Report(StepActionDiagnostics.FollowsWithoutPulses(of.Span, output.Tag));
        }
        else if (of is not null and not TotalQuantity && syntax.Pulse is not null)
        {
            _context.Report(StepActionDiagnostics.PulsesOfNothing(place.At(syntax.Pulse)));
        }

        if (output.Delivery is null)
        {
            return null;
        }

        AmountDoseAction dose = new(
            output, amount, per, of, pulse, maximum, Reactions.Of(syntax.MaximumReaction, Reaction.Hold), place.At(syntax));
        return Fits(dose) ? dose : null;
    }

    private LiteralQuantity? Volume(AmountSyntax? syntax, LinePlace place) =>
        syntax is not null && _amounts.Positive(syntax, Dimension.Volume, place) is { } value
            ? new LiteralQuantity(value, Dimension.Volume, place.At(syntax))
            : null;

    private LiteralQuantity? Per(WordSyntax? word, LinePlace place)
    {
        if (word is null || _amounts.UnitOf(word, place) is not { } unit)
        {
            return null;
        }

        if (unit.Dimension != Dimension.Volume)
        {
            _context.Report(QuantityDiagnostics.WrongDimension(place.At(word), unit.Dimension, Dimension.Volume));
            return null;
        }

        return new LiteralQuantity(unit.Factor, Dimension.Volume, place.At(word));
    }

    private Quantity? Of(AmountDoseSyntax syntax, LinePlace place)
    {
        if (syntax.Of is null || _declarations.Quantities.Bind(place, default, [], syntax.Of) is not [{ } of])
        {
            return null;
        }

        if (of.Dimension != Dimension.Volume)
        {
            _context.Report(QuantityDiagnostics.WrongDimension(of.Span, of.Dimension, Dimension.Volume));
            return null;
        }

        if (of is LiteralQuantity or SumQuantity)
        {
            _context.Report(StepActionDiagnostics.ProportionToAmount(of.Span));
            return null;
        }

        return of;
    }

    /// <summary>The whole numbers that the controller compares are a DINT's.</summary>
    private bool Fits(AmountDoseAction dose)
    {
        int scan = _context.ScanMilliseconds;
        long most = AmountDoseMeasure.Most(dose, scan);
        bool fits = most <= QuantityMeasure.LargestTotal;
        if (fits && dose.Of is { } of)
        {
            (long given, long basis) = AmountDoseMeasure.Factors(dose, scan);
            long largest = of switch
            {
                ReadingQuantity reading => Math.Max(Math.Abs(reading.Input.Minimum), Math.Abs(reading.Input.Maximum)),
                ParameterQuantity parameter => Math.Max(Math.Abs(parameter.Parameter.Minimum), Math.Abs(parameter.Parameter.Maximum)),
                _ => QuantityMeasure.LargestTotal,
            };
            long pulse = dose.Pulse?.Scans(scan) ?? 0;
            fits = (Int128)given * (most + pulse) <= int.MaxValue && (Int128)basis * largest <= int.MaxValue;
        }

        if (!fits)
        {
            Unit litre = UnitTable.Find("L") ?? throw new InvalidOperationException("there is no litre");
            _context.Report(QuantityDiagnostics.TooLarge(dose.Span, AmountText.Show(QuantityMeasure.VolumeOfAScan(dose.Output, scan), litre)));
        }

        return fits;
    }
}
