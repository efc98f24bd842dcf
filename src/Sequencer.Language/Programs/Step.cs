using System.Collections.Immutable;
using Sequencer.Language.Units;
using Sequencer.Text;

namespace Sequencer.Language.Programs;

/// <summary>A step of the procedure. <see cref="Limit"/> is how long it may take, counted while Running.</summary>
public sealed record Step(
    int Number,
    string Title,
    string Documentation,
    ImmutableArray<StepAction> Actions,
    Duration? Expected,
    StepLimit Limit,
    SourceSpan Span);
