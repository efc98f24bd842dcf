namespace Sequencer.Simulation.Records;

/// <summary>From one scan to another, which is not part of it.</summary>
public readonly record struct ScanInterval(long From, long To)
{
    public long Scans => To - From;
}
