using System.Collections.Immutable;

namespace Sequencer.Simulation.Running;

/// <summary>
/// How a run came out: its expectations, the actions whose moment never came, whether its longest time ended it, and when the
/// event that was to end it came (without its delay; null where it did not).
/// </summary>
internal sealed record RunEnding(
    ImmutableArray<ExpectationResult> Expectations,
    ImmutableArray<UndoneDeed> Undone,
    bool EndedByDuration,
    double? UntilSeconds);
