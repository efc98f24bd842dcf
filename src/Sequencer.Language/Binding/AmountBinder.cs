using System.Numerics;
using Sequencer.Language.Syntax;
using Sequencer.Language.Units;
using Sequencer.Text;

namespace Sequencer.Language.Binding;

/// <summary>Numbers with units: times, amounts and counts.</summary>
internal sealed class AmountBinder
{
    /// <summary>24 days: as milliseconds, the most that an IEC 61131-3 DINT holds in whole days.</summary>
    public const int LongestHours = 576;

    /// <summary>Steps between the ends of a range at a loop current: the exported text works out steps * 16000 + 8000 (microamperes), in 32 bits.</summary>
    public const long LargestSpan = (int.MaxValue - 8_000) / 16_000;

    private readonly BindingContext _context;

    public AmountBinder(BindingContext context) => _context = context;

    /// <summary>The unit; null, and reported, where there is none of that name.</summary>
    public Unit? UnitOf(WordSyntax word, LinePlace place)
    {
        Unit? unit = UnitTable.Find(word.Text);
        if (unit is null)
        {
            string? near = NearestWord.Find(word.Text, UnitTable.All.Select(known => known.Symbol));
            _context.Report(QuantityDiagnostics.UnknownUnit(place.At(word), near) with { Fix = Fix.Replace(place.At(word), InOtherCase(word.Text)) });
        }

        return unit;
    }

    /// <summary>The unit that is meant where only capitals differ; a big M in front might be mega, and a name that only resembles a unit may be another one.</summary>
    private static string? InOtherCase(string word) => word.StartsWith('M')
        ? null
        : UnitTable.All.Select(unit => unit.Symbol).SingleOrDefault(symbol => string.Equals(symbol, word, StringComparison.OrdinalIgnoreCase));

    /// <summary>A time above zero.</summary>
    public Duration? Time(AmountSyntax? amount, LinePlace place) => Time(amount, place, false);

    /// <summary>A time that may be nothing; none at all is nothing.</summary>
    public Duration? TimeOrNothing(AmountSyntax? amount, LinePlace place) => amount is null ? new Duration(0) : Time(amount, place, true);

    /// <summary>The amount in base units of the dimension, above zero.</summary>
    public Rational? Positive(AmountSyntax amount, Dimension dimension, LinePlace place)
    {
        Rational? value = Value(amount, dimension, place);
        if (value is { Sign: <= 0 })
        {
            _context.Report(QuantityDiagnostics.NotPositive(place.At(amount)));
            return null;
        }

        return value;
    }

    /// <summary>The amount in base units of the dimension.</summary>
    public Rational? Value(AmountSyntax amount, Dimension dimension, LinePlace place)
    {
        if (amount.Unit is null)
        {
            _context.Report(QuantityDiagnostics.UnitMissing(place.At(amount), dimension));
            return null;
        }

        Unit? unit = UnitOf(amount.Unit, place);
        if (unit is not null && unit.Dimension != dimension)
        {
            _context.Report(QuantityDiagnostics.WrongDimension(place.At(amount), unit.Dimension, dimension));
            return null;
        }

        return unit is null ? null : amount.Number.Value * unit.Factor;
    }

    /// <summary>A whole number between two bounds.</summary>
    public int? Count(NumberSyntax number, int low, int high, LinePlace place)
    {
        if (number.Value < Rational.FromInt64(low) || number.Value > Rational.FromInt64(high))
        {
            _context.Report(QuantityDiagnostics.CountOutside(place.At(number), low, high));
            return null;
        }

        return (int)number.Value.ToInt64();
    }

    private Duration? Time(AmountSyntax? amount, LinePlace place, bool mayBeNothing)
    {
        if (amount is null || Value(amount, Dimension.Time, place) is not { } seconds)
        {
            return null;
        }

        Rational milliseconds = seconds * 1000;
        if (!milliseconds.IsInteger)
        {
            _context.Report(QuantityDiagnostics.NotWholeMilliseconds(place.At(amount)));
        }
        else if (milliseconds.Sign < 0 || (milliseconds.IsZero && !mayBeNothing))
        {
            _context.Report(QuantityDiagnostics.TimeNotPositive(place.At(amount)));
        }
        else if (milliseconds.Numerator > new BigInteger(LongestHours) * 3_600_000)
        {
            _context.Report(QuantityDiagnostics.TimeTooLong(place.At(amount), LongestHours));
        }
        else
        {
            return new Duration(milliseconds.ToInt64());
        }

        return null;
    }
}
