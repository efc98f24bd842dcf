namespace Sequencer.Simulation.Loop;

/// <summary>A step's number as text and the place of its activity among the system's state variables.</summary>
public sealed record StepPlace(string Step, int Place);
