using System.Collections.Immutable;
using Sequencer.Control.TransitionSystems;

namespace Sequencer.Proof.BitBlasting;

/// <summary>
/// Facts that say what one state is by others (a variable of one system by its namesake of another, a step by the variable of
/// its branch): where they hold, that state need not be a variable of its own, and what is made of both alike is made once.
/// </summary>
internal sealed class DefinedStates
{
    private readonly List<(Variable State, Expression Value)> _inOrder = [];
    private readonly HashSet<Variable> _defined = [];
    private readonly HashSet<Variable> _read = [];

    /// <param name="facts">Booleans over states; each is used as far as it is an equation that fits those before it.</param>
    public DefinedStates(IEnumerable<Expression> facts)
    {
        foreach (Expression fact in facts.Where(fact => fact.Kind == ExpressionKind.Equal && Take(fact)))
        {
            Used.Add(fact);
        }
    }

    /// <summary>The facts that define a state.</summary>
    public HashSet<Expression> Used { get; } = [];

    /// <summary>Each value reads only states that are not defined, or are defined before it.</summary>
    public IReadOnlyList<(Variable State, Expression Value)> InOrder => _inOrder;

    public bool Contains(Variable state) => _defined.Contains(state);

    /// <summary>Of two variables the later is given by the earlier.</summary>
    private bool Take(Expression fact)
    {
        (Expression first, Expression second) = (fact.Operands[0], fact.Operands[1]);
        return first.Variable is { } one && second.Variable is { } other && one.Index > other.Index
            ? Take(first, second) || Take(second, first)
            : Take(second, first) || Take(first, second);
    }

    private bool Take(Expression state, Expression value)
    {
        if (state.Variable is not { Role: VariableRole.State } variable || _defined.Contains(variable) || _read.Contains(variable)
            || !variable.Range.Contains(value.Range))
        {
            return false;
        }

        IReadOnlyList<Variable> read = ExpressionGraph.Variables([value]);
        if (read.Contains(variable) || read.Any(one => one.Role != VariableRole.State))
        {
            return false;
        }

        _inOrder.Add((variable, value));
        _defined.Add(variable);
        _read.UnionWith(read);
        return true;
    }
}
