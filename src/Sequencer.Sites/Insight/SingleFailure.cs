using Sequencer.Control.TransitionSystems;
using Sequencer.Lowering.Supposing;
using Sequencer.Proof;

namespace Sequencer.Sites.Insight;

/// <summary>What becomes of one requirement about the plant when one instrument or device fails.</summary>
/// <param name="Unit">The unit that has the instrument or device.</param>
/// <param name="Failure">What fails and how.</param>
/// <param name="Requirement">A requirement that speaks of it.</param>
/// <param name="System">The system in which it may fail, which a trace of the verdict is of.</param>
/// <param name="Verdict">Of the requirement there.</param>
internal sealed record SingleFailure(string Unit, Failure Failure, Requirement Requirement, TransitionSystem System, Verdict Verdict);
