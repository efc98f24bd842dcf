using System.Collections.Immutable;

namespace Sequencer.Plant.Ledger;

/// <summary>What a plant has moved since the start, for figures of the site: all of it from the balances, none from instruments.</summary>
public sealed record PlantLedger(
    ImmutableArray<TankLedger> Tanks,
    ImmutableArray<LineLedger> Lines,
    ImmutableArray<SubstanceLedger> Substances,
    ImmutableArray<CakeLedger> Cakes)
{
    public static PlantLedger Empty { get; } = new([], [], [], []);
}
