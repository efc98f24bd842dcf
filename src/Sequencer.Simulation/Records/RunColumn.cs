using System.Collections.Immutable;

namespace Sequencer.Simulation.Records;

/// <summary>A column of a run record; <see cref="Labels"/> are the words for its values where it has any.</summary>
public sealed record RunColumn(string Name, ColumnKind Kind, string Unit, int Decimals, string Description)
{
    public ImmutableArray<string> Labels { get; init; } = [];
}
