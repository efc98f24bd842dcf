using Sequencer.Control.TransitionSystems;

namespace Sequencer.Testing;

/// <summary>A system with a watch over the memory of some of its states: copies of them, and what is found, which begins all anew.</summary>
public static class WatchedSystem
{
    public const string Memory = "memory";

    /// <param name="system">The system without a watch.</param>
    /// <param name="build">The builder of its expressions.</param>
    /// <param name="copies">Every so manieth state is kept twice.</param>
    public static TransitionSystem Of(TransitionSystem system, ExpressionBuilder build, int copies)
    {
        StateVariable[] watched = [.. system.States.Where((_, index) => index % copies == 0)];
        int first = system.States.Length;
        Variable[] kept = [.. watched.Select((state, index) => state.Variable with { Name = $"{state.Variable.Name}.copy", Index = first + index })];
        Variable latched = new("watch.latched", VariableRole.State, first + kept.Length, Sort.Boolean, IntegerRange.Boolean);
        Expression differs = build.Or(watched.Zip(kept).Select(pair => build.Not(build.Equal(build.Variable(pair.First.Variable), build.Variable(pair.Second)))));
        Expression acts = build.Or(differs, build.Variable(latched));
        StateVariable[] states =
        [
            .. system.States.Select(state => state with { Next = build.IfThenElse(acts, Constant(build, state.Variable.Sort, state.Initial), state.Next) }),
        ];
        return TransitionSystem.Create(
            system.Name,
            system.ScanMilliseconds,
            system.Inputs,
            [
                .. states,
                .. watched.Zip(kept).Select(pair => states[pair.First.Variable.Index] with { Variable = pair.Second, Purpose = StatePurpose.Watch }),
                new StateVariable(latched, 0, acts, true, StatePurpose.Watch, RandomSystem.Origin),
            ],
            [.. system.Outputs.Select(output => output with { Value = build.IfThenElse(acts, Constant(build, output.Value.Sort, output.Value.Range.Minimum), output.Value) })],
            system.Definitions,
            system.Assumptions,
            [.. system.Requirements, new Requirement(Memory, Memory, Memory, RequirementKind.Never, build.Not(acts), RandomSystem.Origin)],
            system.Alarms);
    }

    private static Expression Constant(ExpressionBuilder build, Sort sort, long value) => sort == Sort.Boolean ? build.Constant(value == 1) : build.Constant(value);
}
