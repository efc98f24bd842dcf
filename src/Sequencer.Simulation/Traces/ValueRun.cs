namespace Sequencer.Simulation.Traces;

/// <summary>From this scan on the value is <see cref="Value"/>, and <see cref="Change"/> more in each scan after it.</summary>
internal readonly record struct ValueRun(long From, long Value, long Change)
{
    public long At(long scan) => Value + (Change * (scan - From));
}
