using Sequencer.Language.Syntax;
using Sequencer.Language.Units;

namespace Sequencer.Language.Binding;

/// <summary>Rates such as <c>0.40 m3/min</c>: any unit of the dimension over a unit of time.</summary>
internal static class RateBinder
{
    /// <summary>Base units a second, above zero; null, and reported, where it is none.</summary>
    public static Rational? PerSecond(AmountSyntax rate, WordSyntax unit, Dimension dimension, LinePlace place, BindingContext context)
    {
        int stroke = unit.Text.LastIndexOf('/');
        Unit? amount = stroke > 0 ? UnitTable.Find(unit.Text[..stroke]) : null;
        Unit? time = stroke > 0 ? UnitTable.Find(unit.Text[(stroke + 1)..]) : null;
        if (amount?.Dimension != dimension || time?.Dimension != Dimension.Time)
        {
            context.Report(QuantityDiagnostics.NotARate(place.At(unit), dimension));
            return null;
        }

        Rational perSecond = rate.Number.Value * amount.Factor / time.Factor;
        if (perSecond.Sign <= 0)
        {
            context.Report(QuantityDiagnostics.NotPositive(place.At(rate)));
            return null;
        }

        return perSecond;
    }
}
