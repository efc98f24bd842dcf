using Sequencer.Plant.Yaml;
using Sequencer.Simulation.Scenarios;
using Sequencer.Text;

namespace Sequencer.Sites.Recipes;

/// <summary>The value of one parameter of one unit, as it is written; <see cref="Span"/> is where the value stands.</summary>
public sealed record RecipeValue(Placed<string> Unit, Placed<string> Parameter, Measure Value, SourceSpan Span);
