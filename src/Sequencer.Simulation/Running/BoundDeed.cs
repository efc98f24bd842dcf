namespace Sequencer.Simulation.Running;

/// <summary>A deed ready to be done in a run, with the words for its record.</summary>
internal sealed record BoundDeed(EventWatch Watch, string Words, Action<Hands> Do);
