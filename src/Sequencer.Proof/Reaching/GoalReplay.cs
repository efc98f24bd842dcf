using System.Collections.Immutable;
using Sequencer.Control.Execution;
using Sequencer.Control.Traces;
using Sequencer.Control.TransitionSystems;
using Sequencer.Proof.Runs;

namespace Sequencer.Proof.Reaching;

/// <summary>
/// Judges ways to goals scan by scan on the compiled stepper, which no search engine shares. Where a way is millions of scans long,
/// nearly all of them alike, those that are alike are judged as one stride.
/// </summary>
internal sealed class GoalReplay
{
    private const long MostScans = 1_000_000;

    private readonly TransitionSystem _system;
    private readonly CompiledStepper _stepper;
    private readonly int _goals;

    public GoalReplay(TransitionSystem system)
    {
        _system = system;
        _goals = system.Goals.Length;
        ImmutableArray<Expression> observed = [.. system.Goals.Select(goal => goal.Reached), .. system.Assumptions.Select(assumption => assumption.Holds)];
        _stepper = new CompiledStepper(system, observed);
    }

    /// <summary>The way up to the scan that reaches the goal first; null if none does, or an assumption or a range is broken before.</summary>
    public Trace? UpTo(int goal, Trace way)
    {
        if (!way.Segments.All(segment => _system.Inputs.Zip(segment.Inputs, (input, value) => input.Range.Contains(value)).All(inside => inside)))
        {
            return null;
        }

        if (way.Scans > MostScans)
        {
            Expression[] assumed = [.. _system.Assumptions.Select(assumption => assumption.Holds)];
            ExpressionBuilder build = new();
            IReadOnlyList<Expression> own = build.Substitute([_system.Goals[goal].Reached, .. assumed], new Dictionary<Variable, Expression>());
            return new SearchRun(_system, build.And(own.Skip(1)), build.Not(own[0]), []).UpToFailure(way.Segments);
        }

        bool reached = false;
        long played = TracePlayback.Play(way, _stepper, (stepper, _) =>
        {
            bool kept = stepper.Observed.AsSpan(_goals).IndexOf(0L) < 0;
            reached = kept && stepper.Observed[goal] == 1;
            return kept && !reached;
        });
        return reached ? way.First(played) : null;
    }
}
