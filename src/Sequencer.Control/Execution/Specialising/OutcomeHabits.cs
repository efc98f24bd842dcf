namespace Sequencer.Control.Execution.Specialising;

/// <summary>Which instructions of the whole list have outcomes that are not to be counted on.</summary>
internal sealed class OutcomeHabits(int instructions)
{
    /// <summary>An outcome that was otherwise than expected so often within a stretch is not counted on.</summary>
    private const int MissesOfVarying = 32;

    private readonly int[] _misses = new int[instructions];

    public bool[] Varies { get; } = new bool[instructions];

    /// <summary>An outcome was not as it was counted on; true where it is not counted on any more.</summary>
    public bool Missed(int instruction)
    {
        Varies[instruction] = ++_misses[instruction] >= MissesOfVarying;
        return Varies[instruction];
    }

    /// <summary>What is rare is not to add up over many scans.</summary>
    public void BeginStretch() => Array.Clear(_misses);

    public void Forget()
    {
        BeginStretch();
        Array.Clear(Varies);
    }
}
