namespace Sequencer.Text;

/// <summary>A stretch of characters: where it starts and how long it is, in UTF-16 units.</summary>
public readonly record struct TextSpan
{
    public TextSpan(int start, int length)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(start);
        ArgumentOutOfRangeException.ThrowIfNegative(length);
        Start = start;
        Length = length;
    }

    public int Start { get; }

    public int Length { get; }

    public int End => Start + Length;

    public static TextSpan Between(int start, int end) => new(start, end - start);

    /// <summary>The smallest span that holds both.</summary>
    public TextSpan Cover(TextSpan other) =>
        Between(Math.Min(Start, other.Start), Math.Max(End, other.End));

    public TextSpan Shift(int offset) => new(Start + offset, Length);
}
