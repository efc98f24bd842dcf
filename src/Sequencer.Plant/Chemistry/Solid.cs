namespace Sequencer.Plant.Chemistry;

/// <summary>A pure solid that dissolves into components: K = product of {component}^coefficient at saturation.</summary>
public sealed record Solid(string Name, Stoichiometry Dissolution, EquilibriumConstant Constant, string Source);
