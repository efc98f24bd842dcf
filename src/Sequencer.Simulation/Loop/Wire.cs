namespace Sequencer.Simulation.Loop;

/// <summary>A Boolean terminal of the plant joined to one of the program.</summary>
internal readonly record struct Wire(int Plant, int Program);
