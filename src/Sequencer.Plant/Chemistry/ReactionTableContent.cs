using System.Collections.Immutable;

namespace Sequencer.Plant.Chemistry;

/// <summary>The rows of a table of constants, in its order.</summary>
internal sealed record ReactionTableContent(
    ImmutableArray<Component> Components,
    ImmutableArray<AqueousSpecies> Species,
    ImmutableArray<Solid> Solids);
