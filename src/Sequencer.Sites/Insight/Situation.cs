using System.Collections.Immutable;
using Sequencer.Language.Programs;

namespace Sequencer.Sites.Insight;

/// <summary>What is always so of a unit in one kind of scan.</summary>
/// <param name="On">Outputs that are always on (open, running).</param>
/// <param name="Maybe">Outputs that may be on and may be off.</param>
/// <param name="Off">Outputs that are always off.</param>
/// <param name="Moved">Analogue outputs that may have another value than their safe one.</param>
/// <param name="States">The states that the unit may be in after the scan.</param>
internal sealed record Situation(
    ImmutableArray<string> On,
    ImmutableArray<string> Maybe,
    ImmutableArray<string> Off,
    ImmutableArray<string> Moved,
    ImmutableArray<ProceduralState> States)
{
    /// <summary>Outputs that this one forces off though the other may have them on.</summary>
    public ImmutableArray<string> StopsOf(Situation other) => [.. other.On.Concat(other.Maybe).Where(Off.Contains)];

    public ImmutableArray<string> StartsOf(Situation other) => [.. other.Off.Concat(other.Maybe).Where(On.Contains)];
}
