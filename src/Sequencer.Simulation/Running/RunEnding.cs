using System.Collections.Immutable;
using Sequencer.Simulation.Scenarios;

namespace Sequencer.Simulation.Running;

/// <summary>
/// How a run came out: its expectations, the actions whose moment never came, whether its longest time ended it, and when the
/// event that was to end it came (without its delay; null where it did not).
/// </summary>
internal sealed record RunEnding(
    ImmutableArray<ExpectationResult> Expectations,
    ImmutableArray<ScriptedAction> Idle,
    bool EndedByDuration,
    double? UntilSeconds);
