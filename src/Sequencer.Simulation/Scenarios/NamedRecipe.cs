using Sequencer.Text;

namespace Sequencer.Simulation.Scenarios;

/// <summary>The name of the recipe that a scenario is played with, and where it says so.</summary>
public sealed record NamedRecipe(string Name, SourceSpan Span);
