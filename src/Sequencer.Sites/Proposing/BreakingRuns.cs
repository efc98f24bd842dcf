using Sequencer.Control.Execution;
using Sequencer.Control.Traces;
using Sequencer.Control.TransitionSystems;

namespace Sequencer.Sites.Proposing;

/// <summary>Runs that have broken a requirement, in the site as it is or with some addition: what breaks in one of them again need not be proved.</summary>
internal sealed class BreakingRuns
{
    private readonly List<Trace> _runs = [];

    public int Count => _runs.Count;

    public void Add(Trace run) => _runs.Add(run);

    /// <summary>Whether the inputs of one of the runs break the requirement in this system, while all that it assumes is kept.</summary>
    public bool Break(TransitionSystem system, Requirement requirement)
    {
        Interpreter interpreter = new(system, [requirement.Holds, .. system.Assumptions.Select(assumption => assumption.Holds)]);
        return _runs.Where(run => run.Segments.All(segment => segment.Inputs.Length == system.Inputs.Length)).Any(run =>
        {
            bool broken = false;
            TracePlayback.Play(run, interpreter, (stepper, _) =>
            {
                bool kept = stepper.Observed.AsSpan(1).IndexOf(0L) < 0;
                broken = kept && stepper.Observed[0] == 0;
                return kept && !broken;
            });
            return broken;
        });
    }
}
