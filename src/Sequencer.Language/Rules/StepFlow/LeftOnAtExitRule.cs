using System.Collections.Immutable;
using Sequencer.Language.Programs;
using Sequencer.Language.Rules.Analysis;

namespace Sequencer.Language.Rules.StepFlow;

/// <summary>An output that rests at its last value, on some way on when its branch ends, with no step beside that could switch it off.</summary>
internal sealed class LeftOnAtExitRule : IProgramRule
{
    public void Check(UnitProgram program, RuleContext context)
    {
        foreach (Output output in program.Outputs.Where(output => output.Safe.Last))
        {
            ProgramFacts facts = context.Facts(program);
            bool[] on = CanBeOnAfter(output, facts.Graph);
            StepWay? exit = facts.Graph.Ways.FirstOrDefault(way => way is { To: [], Transition: not null } && facts.Graph.Steps[way.From[0]].IsOfBatch
                && way.From.Any(step => on[step]) && !way.From.Any(step => IsOff(output, step, facts)));
            if (exit is { Transition: { } way })
            {
                context.Report(CourseDiagnostics.LeftOnAtExit(way.Span, output));
            }
        }
    }

    /// <summary>For each step whether the output can be on when the step is left: the step switches it on, or it came on and stays.</summary>
    private static bool[] CanBeOnAfter(Output output, StepGraph graph)
    {
        bool[] after = new bool[graph.Steps.Length];
        Queue<int> open = new(Enumerable.Range(0, after.Length).Where(step => Drives(output, graph.Steps[step]).Any(drive => drive.On)));
        while (open.TryDequeue(out int step))
        {
            if (after[step])
            {
                continue;
            }

            after[step] = true;
            foreach (int target in graph.Leaving[step].Select(way => graph.Ways[way])
                .Where(way => !way.From.Any(other => other != step && SwitchesOff(output, graph.Steps[other])))
                .SelectMany(way => way.To).Where(target => !SwitchesOff(output, graph.Steps[target])))
            {
                open.Enqueue(target);
            }
        }

        return after;
    }

    private static bool IsOff(Output output, int place, ProgramFacts facts) => Enumerable.Range(0, facts.Graph.Steps.Length)
        .Any(other => facts.Situations.Pairs.CanBeTogether(place, other) && SwitchesOff(output, facts.Graph.Steps[other]));

    private static bool SwitchesOff(Output output, Step step) => Drives(output, step).Any(drive => drive is { On: false, While: null });

    private static ImmutableArray<DriveAction> Drives(Output output, Step step) => [.. step.Actions.OfType<DriveAction>().Where(drive => drive.Output.Tag == output.Tag)];
}
