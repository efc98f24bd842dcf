using System.Collections.Immutable;

namespace Sequencer.Plant.Chemistry;

/// <summary>
/// How many of each component, and of water, make up one species, or are set free when one mole of a solid dissolves.
/// Component names are those of <see cref="Component"/>, or <c>H+</c>; coefficients may be negative.
/// </summary>
public sealed record Stoichiometry(ImmutableArray<ComponentCoefficient> Components, double Water);
