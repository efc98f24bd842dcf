using Sequencer.Control.TransitionSystems;
using Sequencer.Language.Programs;
using Sequencer.Text;

namespace Sequencer.Lowering.Obligations;

/// <summary>Each step at work and each transition taken: what no run can bring about stands in the program in vain.</summary>
internal static class Goals
{
    public static void Add(UnitScan scan)
    {
        foreach (Step step in scan.Unit.Steps)
        {
            Expression works = scan.Build.And(
                scan.StepNow(step.Number), scan.WorksNow(step), scan.Build.Not(scan.Situation.PassedOverNow(step.Number)));
            scan.System.Reach(new Goal(
                Work(scan, step.Number), scan.Unit.Name, FormattableString.Invariant($"step {step.Number} \"{step.Title}\" works"), works, [.. Into(scan, step)], Meanwhile(scan, scan.Unit.FirstStep(step.State) == step ? [] : [step.Number]), new Origin(step.Span)));
        }

        foreach ((OrderedTransition transition, Expression cleared) in scan.Situation.Cleared)
        {
            scan.System.Reach(new Goal(scan.Named(transition.Name), scan.Unit.Name, Words(transition), cleared, [.. transition.From.Select(from => Work(scan, from))], Meanwhile(scan, transition.From), new Origin(transition.Span)));
        }
    }

    /// <summary>The transitions that lead to the step; to the first of a section any step of the batch, to the first of all nothing.</summary>
    private static IEnumerable<string> Into(UnitScan scan, Step step) =>
        scan.Unit.FirstStep(step.State) != step ? scan.Situation.Cleared.Where(way => way.Transition.To.Contains(step.Number)).Select(way => scan.Named(way.Transition.Name))
        : step.IsOfBatch ? []
        : scan.Unit.Steps.Where(earlier => earlier.IsOfBatch).Select(earlier => Work(scan, earlier.Number));

    /// <summary>The steps stay active, and the unit in the state that they work in.</summary>
    private static Expression Meanwhile(UnitScan scan, IEnumerable<int> steps) => scan.Build.And(
        steps.Select(number => scan.Build.And(
            scan.Situation.Stored(number).Active, scan.State.StoredIs(scan.Unit.Steps.First(step => step.Number == number).State))));

    private static string Work(UnitScan scan, int step) => scan.Named(FormattableString.Invariant($"step{step}"));

    private static string Words(OrderedTransition transition)
    {
        string from = transition.From.Length == 1 ? $"step {transition.From[0]}" : $"steps {string.Join(", ", transition.From)}";
        string to = transition.To.IsEmpty ? "the end" : transition.To.Length == 1 ? $"step {transition.To[0]}" : $"steps {string.Join(", ", transition.To)}";
        return $"{from} to {to}{(transition.When is null ? " by its limit" : "")}";
    }
}
