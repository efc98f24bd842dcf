using System.Collections.Immutable;
using Sequencer.Control.Execution;
using Sequencer.Control.Traces;
using Sequencer.Control.TransitionSystems;
using Sequencer.Language.Programs;

namespace Sequencer.Sites.Proposing;

/// <summary>What a run did that an addition could have kept it from.</summary>
/// <param name="Taken">The unit's transitions that it took, the last one first.</param>
/// <param name="On">The unit's outputs that are on in its last scan.</param>
internal sealed record RunEnd(ImmutableArray<Transition> Taken, ImmutableArray<string> On)
{
    public static RunEnd Of(LoadedSite site, UnitProgram unit, Trace run)
    {
        TransitionSystem system = site.ProofSystem;
        Goal[] goals = [.. system.Goals.Where(goal => goal.Unit == unit.Name && unit.Transitions.Any(way => way.Span == goal.Origin.Span))];
        Interpreter interpreter = new(system, [.. goals.Select(goal => goal.Reached)]);
        Dictionary<int, long> last = [];
        TracePlayback.Play(run, interpreter, (stepper, scan) =>
        {
            for (int goal = 0; goal < goals.Length; goal++)
            {
                if (stepper.Observed[goal] == 1)
                {
                    last[goal] = scan;
                }
            }

            return true;
        });
        return new RunEnd(
            [.. last.OrderByDescending(taken => taken.Value).Select(taken => unit.Transitions.First(way => way.Span == goals[taken.Key].Origin.Span))],
            [.. unit.Outputs.Select(output => output.Tag).Where(tag => IsOn(system, interpreter, tag))]);
    }

    private static bool IsOn(TransitionSystem system, Interpreter interpreter, string tag) =>
        system.Outputs.Index().FirstOrDefault(output => output.Item.Name == tag) is (var place, { Value.Sort: Sort.Boolean }) && interpreter.Outputs[place] == 1;
}
