using System.Collections.Immutable;
using Sequencer.Control.TransitionSystems;

namespace Sequencer.Proof.BitBlasting;

/// <summary>
/// One scan of a system in gates: the state before it, free inputs within their ranges, and the
/// encoding of anything over them. The state after it is the next-state expressions' own vectors.
/// </summary>
internal sealed class Scan
{
    private readonly TransitionSystem _system;

    private Scan(Circuit circuit, TransitionSystem system, ImmutableArray<BitVector> states)
    {
        Circuit = circuit;
        _system = system;
        States = states;
        Inputs = [.. system.Inputs.Select(input => Encoding.Unknown(circuit, input))];
        Encoding = new Encoding(circuit, variable => variable.Role == VariableRole.Input ? Inputs[variable.Index] : States[variable.Index]);
    }

    public Circuit Circuit { get; }

    public ImmutableArray<BitVector> Inputs { get; }

    public ImmutableArray<BitVector> States { get; }

    public Encoding Encoding { get; }

    /// <summary>A scan from any state within the ranges.</summary>
    public static Scan FromAnywhere(Circuit circuit, TransitionSystem system) => FromWhere(circuit, system, []);

    /// <summary>
    /// A scan from any state within the ranges in which these facts hold, as far as they say that two variables are equal: such
    /// variables share their bits, so that what is made of them alike is made once.
    /// </summary>
    public static Scan FromWhere(Circuit circuit, TransitionSystem system, IEnumerable<Expression> facts)
    {
        BitVector[] states = [.. system.States.Select(state => Encoding.Unknown(circuit, state.Variable))];
        foreach (Expression fact in facts)
        {
            if (EqualVariables(fact) is var (first, second))
            {
                states[Math.Max(first.Index, second.Index)] = states[Math.Min(first.Index, second.Index)];
            }
        }

        return new Scan(circuit, system, [.. states]);
    }

    /// <summary>A scan from any state within the ranges in which the definitions hold; a defined state has its definition's bits.</summary>
    public static Scan FromWhere(Circuit circuit, TransitionSystem system, DefinedStates defined)
    {
        BitVector?[] states = new BitVector?[system.States.Length];
        foreach (StateVariable state in system.States.Where(state => !defined.Contains(state.Variable)))
        {
            states[state.Variable.Index] = Encoding.Unknown(circuit, state.Variable);
        }

        Encoding before = new(circuit, variable => states[variable.Index] ?? throw new InvalidOperationException($"{variable.Name} is read before it is defined"));
        foreach ((Variable state, Expression value) in defined.InOrder)
        {
            states[state.Index] = before.Vector(value);
        }

        return new Scan(circuit, system, [.. states.Select(state => state ?? throw new InvalidOperationException("a state is neither free nor defined"))]);
    }

    /// <summary>The two states of one range that the fact says to be equal; null where it says something else.</summary>
    public static (Variable First, Variable Second)? EqualVariables(Expression fact) =>
        fact is { Kind: ExpressionKind.Equal, Operands: [{ Kind: ExpressionKind.Variable, Variable: { Role: VariableRole.State } first }, { Kind: ExpressionKind.Variable, Variable: { Role: VariableRole.State } second }] }
        && first.Sort == second.Sort && first.Range == second.Range
            ? (first, second)
            : null;

    /// <summary>The first scan of a run.</summary>
    public static Scan First(Circuit circuit, TransitionSystem system) =>
        new(circuit, system, [.. system.States.Select(state => Encoding.Value(circuit, state.Variable, state.Initial))]);

    /// <summary>The scan after this one.</summary>
    public Scan Following() => new(Circuit, _system, After());

    public ImmutableArray<BitVector> After() => [.. _system.States.Select(state => Encoding.Vector(state.Next))];

    /// <summary>An encoding of expressions over states alone, read after this scan: of the next values only those that are asked for.</summary>
    public Encoding EncodingAfter() => new(Circuit, variable => Encoding.Vector(_system.States[variable.Index].Next));

    public ImmutableArray<long> ModelInputs() => Read(_system.Inputs, Inputs);

    public ImmutableArray<long> ModelStates() => Read([.. _system.States.Select(state => state.Variable)], States);

    private ImmutableArray<long> Read(ImmutableArray<Variable> variables, ImmutableArray<BitVector> vectors) =>
        [.. variables.Zip(vectors, (variable, vector) =>
            variable.Sort == Sort.Boolean ? (Circuit.Solver.ModelValue(vector.Bits[0]) ? 1L : 0L) : vector.ModelValue(Circuit.Solver))];
}
