using System.Collections.Immutable;
using Sequencer.Language.Programs;

namespace Sequencer.Sites.Insight;

/// <summary>A step of the batch at work, and against what may interrupt it; null where no scan of that kind exists.</summary>
internal sealed record StepRow(
    Step Step,
    Situation? Works,
    Situation? Hold,
    Situation? Held,
    Situation? Stop,
    Situation? Abort,
    Situation? PowerLoss,
    ImmutableArray<string> Requirements);
