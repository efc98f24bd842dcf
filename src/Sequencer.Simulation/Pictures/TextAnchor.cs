namespace Sequencer.Simulation.Pictures;

/// <summary>Which point of a text its place names.</summary>
public enum TextAnchor
{
    Start,
    Middle,
    End,
}
