using Sequencer.Control.TransitionSystems;
using Sequencer.Testing;

namespace Sequencer.Proof.Tests.Certificates;

/// <summary>A transition system written down by hand, for a test.</summary>
internal sealed class SystemSketch
{
    private readonly List<Variable> _inputs = [];
    private readonly List<(Variable Variable, long Initial, Expression? Next)> _states = [];
    private readonly List<Assumption> _assumptions = [];
    private readonly List<Requirement> _requirements = [];
    private readonly List<OutputVariable> _outputs = [];
    private readonly List<Definition> _definitions = [];

    public ExpressionBuilder Builder { get; } = new();

    public Expression Input(string name) => Input(name, 0, 1, Sort.Boolean);

    public Expression Input(string name, long minimum, long maximum, Sort sort = Sort.Integer)
    {
        _inputs.Add(new Variable(name, VariableRole.Input, _inputs.Count, sort, new IntegerRange(minimum, maximum)));
        return Builder.Variable(_inputs[^1]);
    }

    public Expression State(string name, bool initial = false) => State(name, 0, 1, initial ? 1 : 0, Sort.Boolean);

    public Expression State(string name, long minimum, long maximum, long initial, Sort sort = Sort.Integer)
    {
        Variable variable = new(name, VariableRole.State, _states.Count, sort, new IntegerRange(minimum, maximum));
        _states.Add((variable, initial, null));
        return Builder.Variable(variable);
    }

    public void Next(Expression state, Expression next)
    {
        int index = state.Variable!.Index;
        _states[index] = _states[index] with { Next = next };
    }

    public void Assume(string name, Expression holds) => _assumptions.Add(new Assumption(name, "taken for granted", holds, RandomSystem.Origin));

    public void Require(string name, string statement, Expression holds) =>
        _requirements.Add(new Requirement(name, "Required", statement, RequirementKind.Never, holds, RandomSystem.Origin));

    public void Output(string name, Expression value) => _outputs.Add(new OutputVariable(name, value, RandomSystem.Origin));

    public void Define(string name, Expression value) => _definitions.Add(new Definition(name, value, RandomSystem.Origin));

    public TransitionSystem Create(string name) => TransitionSystem.Create(
        name,
        100,
        [.. _inputs],
        [.. _states.Select(state => new StateVariable(state.Variable, state.Initial, state.Next ?? Builder.Variable(state.Variable), false, StatePurpose.Control, RandomSystem.Origin))],
        [.. _outputs],
        [.. _definitions],
        [.. _assumptions],
        [.. _requirements],
        []);
}
