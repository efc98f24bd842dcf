using Sequencer.Language.Programs;
using Sequencer.Language.Units;

namespace Sequencer.Language.Rules.Analysis;

/// <summary>
/// A comparison of one reading with what does not change during a batch: true on the side
/// <see cref="Above"/> of a bound that lies, over all settings of the parameters, from
/// <see cref="Low"/> to <see cref="High"/> (base units).
/// </summary>
internal readonly record struct ReadingThreshold(AnalogueInput Input, bool Above, Rational Low, Rational High)
{
    /// <summary>Null where the fact compares nothing, more than one reading, or a total.</summary>
    public static ReadingThreshold? Of(Condition fact)
    {
        if (fact is not CompareFact compare)
        {
            return null;
        }

        // factor * reading + rest > 0
        LinearForm form = LinearForm.Difference(compare.Left, compare.Right);
        List<LinearTerm> readings = [.. form.Terms.Where(term => term.Leaf is ReadingQuantity)];
        if (readings is not [{ Leaf: ReadingQuantity reading } term] || (term.Factor != 1 && term.Factor != -1)
            || form.Bounds(term) is not var (low, high))
        {
            return null;
        }

        bool greater = compare.Comparison is Comparison.Greater or Comparison.GreaterOrEqual;
        return term.Factor.Sign > 0
            ? new ReadingThreshold(reading.Input, greater, -high, -low)
            : new ReadingThreshold(reading.Input, !greater, low, high);
    }

    /// <summary>On its way to the other's bound the reading surely meets this one first.</summary>
    public bool ComesBefore(ReadingThreshold other) =>
        Input.Tag == other.Input.Tag && Above == other.Above && (Above ? High < other.Low : Low > other.High);

    public ReadingThreshold Opposite() => this with { Above = !Above };
}
