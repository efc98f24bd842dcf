using System.Collections.Immutable;
using Sequencer.Control.TransitionSystems;
using Sequencer.Proof.Slicing;

namespace Sequencer.Proof.Reaching;

/// <summary>
/// The part of a system that its goals depend on, with a state for each goal that remembers whether it has been reached, so that
/// a search for new facts of the state finds goals too.
/// </summary>
internal sealed class GoalSystem
{
    private GoalSystem(Slice slice, ImmutableArray<Goal> goals, int firstMemory)
    {
        Slice = slice;
        Goals = goals;
        FirstMemory = firstMemory;
    }

    public Slice Slice { get; }

    public ImmutableArray<Goal> Goals { get; }

    /// <summary>The place of the first goal's memory among the slice's states; the others follow in order.</summary>
    public int FirstMemory { get; }

    /// <summary>For each goal what is best kept on the last stretch, in the slice's builder.</summary>
    public ImmutableArray<Expression> Meanwhile => Slice.Requirement.Guesses;

    public static GoalSystem Of(TransitionSystem whole, ImmutableArray<Goal> goals)
    {
        ExpressionBuilder build = new();
        IReadOnlyList<Expression> own = build.Substitute(
            [.. whole.States.Select(state => state.Next), .. whole.Assumptions.Select(assumption => assumption.Holds), .. goals.Select(goal => goal.Reached), .. goals.Select(goal => goal.Meanwhile)],
            new Dictionary<Variable, Expression>());
        int states = whole.States.Length;
        StateVariable[] memories =
        [
            .. goals.Select((goal, index) =>
            {
                Variable memory = new($"{goal.Name}.reached", VariableRole.State, states + index, Sort.Boolean, IntegerRange.Boolean);
                Expression reached = own[states + whole.Assumptions.Length + index];
                return new StateVariable(memory, 0, build.Or(build.Variable(memory), reached), false, StatePurpose.Monitor, goal.Origin);
            }),
        ];
        Requirement watched = new(
            "goals", "", "", RequirementKind.Never, build.Not(build.And(memories.Select(memory => build.Variable(memory.Variable)))), goals[0].Origin)
        {
            Guesses = [.. own.Skip(states + whole.Assumptions.Length + goals.Length)],
        };
        TransitionSystem extended = TransitionSystem.Create(
            whole.Name,
            whole.ScanMilliseconds,
            whole.Inputs,
            [.. whole.States.Select((state, index) => state with { Next = own[index] }), .. memories],
            [],
            [],
            [.. whole.Assumptions.Select((assumption, index) => assumption with { Holds = own[states + index] })],
            [watched],
            []);
        Slice slice = Slicer.Cut(extended, watched, AssumptionScope.All);
        return new GoalSystem(slice, goals, slice.System.States.Length - goals.Length);
    }

    /// <summary>The goal as a requirement that it never be reached.</summary>
    public static Requirement Never(Goal goal)
    {
        ExpressionBuilder build = new();
        Expression reached = build.Substitute([goal.Reached], new Dictionary<Variable, Expression>())[0];
        return new Requirement($"{goal.Name}.never", goal.Words, $"never {goal.Words}", RequirementKind.Never, build.Not(reached), goal.Origin);
    }
}
