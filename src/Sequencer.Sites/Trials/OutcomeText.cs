using Sequencer.Plant.Yaml;
using Sequencer.Simulation.Trials;

namespace Sequencer.Sites.Trials;

/// <summary>A value that is to be kept of each run, as it is written.</summary>
public sealed record OutcomeText(Placed<string> Value, string Title, TakenAs Taken);
