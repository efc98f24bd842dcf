using Sequencer.Control.TransitionSystems;

namespace Sequencer.Sites.Tests.Variants.Guided;

/// <param name="Requirement">What was broken.</param>
/// <param name="Scan">The first scan of the run in which it was, from 1.</param>
internal sealed record GuidedBreak(Requirement Requirement, long Scan);
