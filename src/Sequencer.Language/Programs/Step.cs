using System.Collections.Immutable;
using Sequencer.Language.Units;
using Sequencer.Text;

namespace Sequencer.Language.Programs;

/// <summary>
/// A step. It works in one state: Running in the procedure itself, Holding, Restarting, Stopping or Aborting
/// in the procedure of that state; <see cref="Limit"/> is how long it may take, counted in that state.
/// Where <see cref="OnlyIf"/> does not surely hold on entry, the step is passed over.
/// </summary>
public sealed record Step(
    int Number,
    string Title,
    string Documentation,
    ProceduralState State,
    Condition? OnlyIf,
    ImmutableArray<StepAction> Actions,
    Duration? Expected,
    StepLimit Limit,
    SourceSpan Span)
{
    /// <summary>What the step must own before it begins its work.</summary>
    public ImmutableArray<Claim> Claims { get; init; } = [];

    /// <summary>The units that the step asks to start.</summary>
    public ImmutableArray<Ask> Asks { get; init; } = [];

    /// <summary>Where a restart in this step goes on; null is where the step stood.</summary>
    public RestartPoint? RestartAt { get; init; }

    /// <summary>The step belongs to the procedure of a batch, not to that of Holding, Restarting, Stopping or Aborting.</summary>
    public bool IsOfBatch => State == ProceduralState.Running;
}
