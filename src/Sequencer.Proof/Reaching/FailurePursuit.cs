using System.Collections.Immutable;
using Sequencer.Control.Traces;
using Sequencer.Control.TransitionSystems;
using Sequencer.Proof.Satisfiability;
using Sequencer.Proof.Slicing;

namespace Sequencer.Proof.Reaching;

/// <summary>
/// A failing run, looked for from every place in which a step is at work or a transition was taken: what fails deep in a batch
/// fails a few scans from one of them.
/// </summary>
internal static class FailurePursuit
{
    /// <summary>A run over the slice's inputs that breaks its requirement, or null. Only goals within the slice help; where there are none nothing is looked for.</summary>
    /// <param name="whole">The system.</param>
    /// <param name="requirement">What is to be broken.</param>
    /// <param name="slice">What the requirement can depend on.</param>
    /// <param name="ways">Runs of the system to its goals; where they are known the goals are not looked for.</param>
    /// <param name="budget">Throws when it is spent.</param>
    /// <param name="report">Is told how many goals are reached.</param>
    public static Trace? Find(TransitionSystem whole, Requirement requirement, Slice slice, IReadOnlyList<Trace> ways, Budget budget, Action<int> report)
    {
        HashSet<Variable> within = [.. slice.Inputs, .. slice.States];
        ImmutableArray<Expression> put = whole.Settled.Put(whole.Goals.SelectMany(goal => (Expression[])[goal.Reached, goal.Meanwhile]));
        IEnumerable<Goal> settled = whole.Goals.Select((goal, index) => goal with { Reached = put[2 * index], Meanwhile = put[(2 * index) + 1] });
        ImmutableArray<Goal> goals = [.. settled.Where(goal => ExpressionGraph.Variables([goal.Reached, goal.Meanwhile]).All(within.Contains))];
        if (goals.IsEmpty)
        {
            return null;
        }

        ExpressionBuilder build = new();
        Expression holds = build.Substitute([requirement.Holds], new Dictionary<Variable, Expression>())[0];
        Goal failure = new($"{requirement.Name}.fails", string.Empty, requirement.Title, build.Not(holds), [], build.True, requirement.Origin);
        GoalSystem system = GoalSystem.Of(whole, goals.Add(failure));
        GoalSearch search = new(system, budget);
        Outlook outlook = new(slice, budget);
        if (ways.Count == 0)
        {
            search.Run(report);
            return Look() ?? (search.PursueLast() ? WayTo(goals.Length) : null);
        }

        foreach (Trace way in ways)
        {
            search.Take(system.Slice.Narrow(way));
        }

        // A goal that comes after none and that no way reaches is no place in a procedure: what a failing scan needs.
        return Look()
            ?? Enumerable.Range(0, goals.Length).Where(goal => goals[goal].After.IsEmpty && search.WayTo(goal) is null).ToArray()
                .Where(search.PursueFromNearest).Select(WayTo).OfType<Trace>().Select(outlook.From).FirstOrDefault(run => run is not null)
            ?? (search.PursueFromNearest(goals.Length) || search.BringAboutAtAnyTime(goals.Length) ? WayTo(goals.Length) : null);

        Trace? Look() => Enumerable.Range(0, goals.Length).Select(WayTo).OfType<Trace>().OrderBy(way => way.Scans).Select(outlook.From).FirstOrDefault(run => run is not null);

        Trace? WayTo(int goal) => search.WayTo(goal) is { } way ? slice.Narrow(system.Slice.Widen(new Trace([.. way]))) : null;
    }
}
