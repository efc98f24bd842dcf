using System.Collections.Immutable;
using Sequencer.Control.TransitionSystems;
using Sequencer.Text;

namespace Sequencer.Lowering;

/// <summary>
/// Gathers the parts of a transition system. A state is declared before its next value is known, since
/// the scan reads it first. A state that is not retained reads as its initial value in the scan after a
/// loss of power: the runtime has set it anew.
/// </summary>
internal sealed class SystemBuilder
{
    private readonly List<Variable> _inputs = [];
    private readonly List<DeclaredState> _states = [];
    private readonly List<OutputVariable> _outputs = [];
    private readonly List<Definition> _definitions = [];
    private readonly HashSet<string> _defined = new(StringComparer.Ordinal);
    private readonly List<Assumption> _assumptions = [];
    private readonly List<Requirement> _requirements = [];
    private readonly List<Alarm> _alarms = [];
    private readonly List<Goal> _goals = [];
    private readonly Queue<Action> _later = [];

    public SystemBuilder(int scanMilliseconds)
    {
        ScanMilliseconds = scanMilliseconds;
        PowerReturned = Input("power.returned");
    }

    public ExpressionBuilder Expressions { get; } = new();

    public int ScanMilliseconds { get; }

    /// <summary>True in the first scan after a loss of power.</summary>
    public Expression PowerReturned { get; }

    public Expression Input(string name) => Input(name, Sort.Boolean, IntegerRange.Boolean);

    public Expression Input(string name, IntegerRange range) => Input(name, Sort.Integer, range);

    public DeclaredState State(string name, bool initial, bool retained, StatePurpose purpose, Origin origin) =>
        Declare(name, Sort.Boolean, IntegerRange.Boolean, initial ? 1 : 0, retained, purpose, origin);

    public DeclaredState State(string name, IntegerRange range, long initial, bool retained, StatePurpose purpose, Origin origin) =>
        Declare(name, Sort.Integer, range, initial, retained, purpose, origin);

    /// <summary>Names a fact of the scan and gives it back.</summary>
    public Expression Define(string name, Expression value, Origin origin)
    {
        if (_defined.Add(name))
        {
            _definitions.Add(new Definition(name, value, origin));
        }

        return value;
    }

    public void Output(string name, Expression value, Origin origin) => _outputs.Add(new OutputVariable(name, value, origin));

    public void Assume(Assumption assumption) => _assumptions.Add(assumption);

    public void Require(Requirement requirement) => _requirements.Add(requirement);

    public void Reach(Goal goal) => _goals.Add(goal);

    public void Alarm(string name, string message, Expression raised, Origin origin)
    {
        if (!raised.IsFalse)
        {
            _alarms.Add(new Alarm(name, message, raised, origin));
        }
    }

    /// <summary>Does the work when the whole scan is known.</summary>
    public void Later(Action work) => _later.Enqueue(work);

    public TransitionSystem Build(string name)
    {
        while (_later.TryDequeue(out Action? work))
        {
            work();
        }

        ImmutableArray<StateVariable> states =
        [
            .. _states.Select(state => new StateVariable(
                state.Variable, state.Initial, state.Next, state.Retained, state.Purpose, state.Origin)),
        ];
        return UsedStates.Only(TransitionSystem.Create(
            name, ScanMilliseconds, [.. _inputs], states, [.. _outputs], [.. _definitions], [.. _assumptions], [.. _requirements], [.. _alarms], [.. _goals]));
    }

    private Expression Input(string name, Sort sort, IntegerRange range)
    {
        Variable variable = new(name, VariableRole.Input, _inputs.Count, sort, range);
        _inputs.Add(variable);
        return Expressions.Variable(variable);
    }

    private DeclaredState Declare(string name, Sort sort, IntegerRange range, long initial, bool retained, StatePurpose purpose, Origin origin)
    {
        Variable variable = new(name, VariableRole.State, _states.Count, sort, range);
        Expression stored = Expressions.Variable(variable);
        Expression first = sort == Sort.Boolean ? Expressions.Constant(initial == 1) : Expressions.Constant(initial);
        Expression current = retained ? stored : Expressions.IfThenElse(PowerReturned, first, stored);
        DeclaredState state = new(variable, current, initial, retained, purpose, origin) { Stored = stored };
        _states.Add(state);
        return state;
    }
}
