namespace Sequencer.Simulation.Loop;

/// <summary>An analogue output of the program joined to a set value of the plant; the ends of its range in steps.</summary>
internal readonly record struct SetpointWire(int Plant, int Program, long Low, long High)
{
    /// <summary>0 at the lower end, 1 at the upper.</summary>
    public double Share(long value) => (double)(value - Low) / (High - Low);
}
