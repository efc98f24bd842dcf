using System.Collections.Immutable;

namespace Sequencer.Control.TransitionSystems;

/// <summary>
/// What the states of the watch over memory (<see cref="StatePurpose.Watch"/>) are while memory keeps what is written; a look at the
/// equations tells it. A copy is the same as another state, since both begin alike and have one next value; that a change was found
/// is for ever as it was initially, since its next value is that once it is. What the engines ask of a system is asked of
/// <see cref="Rest"/>, in which nothing reads such states.
/// </summary>
public sealed class SettledStates
{
    private readonly Dictionary<Variable, SettledState> _settled;

    private SettledStates(TransitionSystem rest, Dictionary<Variable, SettledState> settled)
    {
        Rest = rest;
        _settled = settled;
    }

    /// <summary>
    /// The system with the same variables, initial values and runs, whose equations read no settled state; without outputs, alarms,
    /// goals and requirements. The system itself where nothing is settled.
    /// </summary>
    public TransitionSystem Rest { get; }

    /// <summary>In the system's order.</summary>
    public IEnumerable<SettledState> All => _settled.Values.OrderBy(state => state.Variable.Index);

    /// <summary>The expressions with what settled states are in their place, in a builder of their own.</summary>
    public ImmutableArray<Expression> Put(params IEnumerable<Expression> expressions)
    {
        ExpressionBuilder build = new();
        return [.. build.Substitute([.. expressions], Meanings(_settled.Values, build))];
    }

    internal static SettledStates Of(TransitionSystem system)
    {
        Dictionary<Variable, SettledState> settled = Twins(system);
        Expression[] next = [.. system.States.Select(state => state.Next)];
        Expression[] others = [.. system.Assumptions.Select(assumption => assumption.Holds), .. system.Definitions.Select(definition => definition.Value)];
        if (!AddConstants(system, next, settled) && settled.Count == 0)
        {
            return new SettledStates(system, settled);
        }

        do
        {
            ExpressionBuilder build = new();
            IReadOnlyList<Expression> put = build.Substitute([.. next, .. others], Meanings(settled.Values, build));
            next = [.. put.Take(next.Length)];
            others = [.. put.Skip(next.Length)];
        }
        while (AddConstants(system, next, settled));
        TransitionSystem rest = TransitionSystem.Create(
            system.Name,
            system.ScanMilliseconds,
            system.Inputs,
            [.. system.States.Select((state, index) => state with { Next = next[index] })],
            [],
            [.. system.Definitions.Select((definition, index) => definition with { Value = others[system.Assumptions.Length + index] })],
            [.. system.Assumptions.Select((assumption, index) => assumption with { Holds = others[index] })],
            [],
            []);
        return new SettledStates(rest, settled);
    }

    private static Dictionary<Variable, Expression> Meanings(IEnumerable<SettledState> settled, ExpressionBuilder build) =>
        settled.ToDictionary(state => state.Variable, state => state.Meaning(build));

    /// <summary>Where several states are alike the first copy is that of the first, and so on.</summary>
    private static Dictionary<Variable, SettledState> Twins(TransitionSystem system)
    {
        Dictionary<(Expression Next, long Initial, IntegerRange Range), Queue<Variable>> alike = system.States.Where(state => state.Purpose != StatePurpose.Watch)
            .GroupBy(Key, state => state.Variable).ToDictionary(group => group.Key, group => new Queue<Variable>(group));
        Dictionary<Variable, SettledState> settled = [];
        foreach (StateVariable state in Watching(system))
        {
            if (alike.TryGetValue(Key(state), out Queue<Variable>? originals) && originals.TryDequeue(out Variable? twin))
            {
                settled.Add(state.Variable, new SettledState(state.Variable, twin, 0));
            }
        }

        return settled;

        static (Expression Next, long Initial, IntegerRange Range) Key(StateVariable state) => (state.Next, state.Initial, state.Variable.Range);
    }

    /// <summary>Booleans whose next value is their initial one: written so, or by an operand that is the variable itself.</summary>
    private static bool AddConstants(TransitionSystem system, Expression[] next, Dictionary<Variable, SettledState> settled)
    {
        int before = settled.Count;
        foreach (StateVariable state in Watching(system).Where(state => state.Variable.Sort == Sort.Boolean && !settled.ContainsKey(state.Variable)))
        {
            Expression then = next[state.Variable.Index];
            ExpressionKind stays = state.Initial == 0 ? ExpressionKind.And : ExpressionKind.Or;
            bool isConstant = then.IsConstant && then.Value == state.Initial;
            if (isConstant || then.Variable == state.Variable || (then.Kind == stays && then.Operands.Any(operand => operand.Variable == state.Variable)))
            {
                settled.Add(state.Variable, new SettledState(state.Variable, null, state.Initial));
            }
        }

        return settled.Count > before;
    }

    private static IEnumerable<StateVariable> Watching(TransitionSystem system) => system.States.Where(state => state.Purpose == StatePurpose.Watch);
}
