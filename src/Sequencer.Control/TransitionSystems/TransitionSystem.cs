using System.Collections.Immutable;

namespace Sequencer.Control.TransitionSystems;

/// <summary>
/// The one meaning of a site's programs: typed inputs, state variables with their next values,
/// outputs, and what is assumed and required of them; one step is one scan.
/// A system made by <see cref="Create"/> keeps what the engines rely on: variables numbered in order,
/// names unique, initial values and next values inside their ranges.
/// </summary>
public sealed class TransitionSystem
{
    private readonly Lazy<string> _meaning;
    private readonly Lazy<ExpressionDigests> _digests;
    private readonly Lazy<ImmutableArray<IReadOnlyList<Variable>>> _readByNext;
    private readonly Lazy<SettledStates> _settled;

    private TransitionSystem(
        string name,
        int scanMilliseconds,
        ImmutableArray<Variable> inputs,
        ImmutableArray<StateVariable> states,
        ImmutableArray<OutputVariable> outputs)
    {
        Name = name;
        ScanMilliseconds = scanMilliseconds;
        Inputs = inputs;
        States = states;
        Outputs = outputs;
        _meaning = new Lazy<string>(() => MeaningHash.Of(this));
        _digests = new Lazy<ExpressionDigests>(() => new ExpressionDigests(MeaningHash.Roots(this)));
        _readByNext = new Lazy<ImmutableArray<IReadOnlyList<Variable>>>(() => [.. States.Select(state => ExpressionGraph.Variables([state.Next]))]);
        _settled = new Lazy<SettledStates>(() => SettledStates.Of(this));
    }

    /// <summary>The <see cref="MeaningHash"/>, worked out once.</summary>
    public string Meaning => _meaning.Value;

    internal ExpressionDigests Digests => _digests.Value;

    /// <summary>For each state the variables that its next value reads, worked out once: every slice begins with them.</summary>
    public ImmutableArray<IReadOnlyList<Variable>> ReadByNext => _readByNext.Value;

    /// <summary>The states of which a look tells what they are, worked out once.</summary>
    public SettledStates Settled => _settled.Value;

    public string Name { get; }

    public int ScanMilliseconds { get; }

    public ImmutableArray<Variable> Inputs { get; }

    public ImmutableArray<StateVariable> States { get; }

    public ImmutableArray<OutputVariable> Outputs { get; }

    public ImmutableArray<Definition> Definitions { get; private init; } = [];

    public ImmutableArray<Assumption> Assumptions { get; private init; } = [];

    public ImmutableArray<Requirement> Requirements { get; private init; } = [];

    public ImmutableArray<Alarm> Alarms { get; private init; } = [];

    public ImmutableArray<Goal> Goals { get; private init; } = [];

    /// <exception cref="ArgumentException">An invariant of the class does not hold: a defect of the caller.</exception>
    public static TransitionSystem Create(
        string name,
        int scanMilliseconds,
        ImmutableArray<Variable> inputs,
        ImmutableArray<StateVariable> states,
        ImmutableArray<OutputVariable> outputs,
        ImmutableArray<Definition> definitions,
        ImmutableArray<Assumption> assumptions,
        ImmutableArray<Requirement> requirements,
        ImmutableArray<Alarm> alarms,
        ImmutableArray<Goal>? goals = null)
    {
        HashSet<string> names = new(StringComparer.Ordinal);
        for (int index = 0; index < inputs.Length; index++)
        {
            Demand(inputs[index].Role == VariableRole.Input && inputs[index].Index == index, $"input {inputs[index]} is out of place");
            Demand(names.Add(inputs[index].Name), $"two variables are named {inputs[index]}");
        }

        for (int index = 0; index < states.Length; index++)
        {
            StateVariable state = states[index];
            Demand(state.Variable.Role == VariableRole.State && state.Variable.Index == index, $"state {state.Variable} is out of place");
            Demand(names.Add(state.Variable.Name), $"two variables are named {state.Variable}");
            Demand(state.Next.Sort == state.Variable.Sort, $"the next value of {state.Variable} has another sort");
            Demand(state.Variable.Range.Contains(state.Initial), $"the initial value of {state.Variable} is outside {state.Variable.Range}");
            Demand(state.Variable.Range.Contains(state.Next.Range), $"the next value of {state.Variable} is in {state.Next.Range}, outside {state.Variable.Range}");
        }

        return new TransitionSystem(name, scanMilliseconds, inputs, states, outputs)
        {
            Definitions = definitions,
            Assumptions = assumptions,
            Requirements = requirements,
            Alarms = alarms,
            Goals = goals ?? [],
        };
    }

    private static void Demand(bool holds, string otherwise)
    {
        if (!holds)
        {
            throw new ArgumentException(otherwise);
        }
    }
}
