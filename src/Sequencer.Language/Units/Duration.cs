namespace Sequencer.Language.Units;

/// <summary>A length of time, exact to the millisecond.</summary>
public readonly record struct Duration(long Milliseconds)
{
    /// <summary>The number of scans that last at least as long.</summary>
    public long Scans(int scanMilliseconds) => (Milliseconds + scanMilliseconds - 1) / scanMilliseconds;
}
