namespace Sequencer.Control.Execution.Specialising;

/// <summary>Between which values a leaf leaves all comparisons of it with known numbers as they are expected, and which instruction comes out otherwise beyond each end.</summary>
internal readonly record struct Guard(int Register, long Minimum, int BelowMinimum, long Maximum, int AboveMaximum)
{
    public static Guard Open(int register) => new(register, long.MinValue, -1, long.MaxValue, -1);

    /// <summary>Narrowed to what an instruction's outcome allows.</summary>
    public Guard Within(Guard other) => new(
        Register,
        Math.Max(Minimum, other.Minimum),
        other.Minimum > Minimum ? other.BelowMinimum : BelowMinimum,
        Math.Min(Maximum, other.Maximum),
        other.Maximum < Maximum ? other.AboveMaximum : AboveMaximum);
}
