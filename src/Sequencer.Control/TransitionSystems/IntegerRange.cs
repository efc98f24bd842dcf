namespace Sequencer.Control.TransitionSystems;

/// <summary>A closed interval of integers, never empty.</summary>
public readonly record struct IntegerRange
{
    public IntegerRange(long minimum, long maximum)
    {
        if (minimum > maximum)
        {
            throw new ArgumentException($"empty range {minimum}..{maximum}", nameof(maximum));
        }

        Minimum = minimum;
        Maximum = maximum;
    }

    public static IntegerRange Boolean => new(0, 1);

    public long Minimum { get; }

    public long Maximum { get; }

    public bool Contains(long value) => Minimum <= value && value <= Maximum;

    public bool Contains(IntegerRange other) => Minimum <= other.Minimum && other.Maximum <= Maximum;

    public IntegerRange Union(IntegerRange other) =>
        new(Math.Min(Minimum, other.Minimum), Math.Max(Maximum, other.Maximum));

    /// <exception cref="OverflowException">The sum does not fit 64 bits.</exception>
    public static IntegerRange operator +(IntegerRange left, IntegerRange right) =>
        new(checked(left.Minimum + right.Minimum), checked(left.Maximum + right.Maximum));

    /// <exception cref="OverflowException">The product does not fit 64 bits.</exception>
    public static IntegerRange operator *(long factor, IntegerRange range)
    {
        long first = checked(factor * range.Minimum);
        long second = checked(factor * range.Maximum);
        return new IntegerRange(Math.Min(first, second), Math.Max(first, second));
    }

    public static IntegerRange Add(IntegerRange left, IntegerRange right) => left + right;

    public static IntegerRange Multiply(long factor, IntegerRange range) => factor * range;

    public override string ToString() => FormattableString.Invariant($"{Minimum}..{Maximum}");
}
