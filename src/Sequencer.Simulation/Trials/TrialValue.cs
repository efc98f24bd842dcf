namespace Sequencer.Simulation.Trials;

/// <summary>A value that is kept of each run: a name that a scenario could use, its title for people, and which of its values counts.</summary>
public sealed record TrialValue(string Name, string Title, string Unit, TakenAs Taken);
