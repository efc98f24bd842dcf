using System.Collections.Immutable;
using Sequencer.Control.TransitionSystems;

namespace Sequencer.Proof.Certificates;

/// <summary>
/// The part of a system that a certificate speaks of. Next values are needed for the states of the
/// invariant and for the integer states whose range the certificate proves on the way: those that it
/// reads, and those from which the values (not the conditions) of their next values are made.
/// </summary>
internal sealed class CertificateCone
{
    private CertificateCone(ImmutableArray<Variable> inputs, ImmutableArray<StateVariable> before, ImmutableArray<StateVariable> stepped)
    {
        Inputs = inputs;
        Before = before;
        Stepped = stepped;
    }

    /// <summary>Inputs read anywhere, in the system's order.</summary>
    public ImmutableArray<Variable> Inputs { get; }

    /// <summary>States read anywhere, in the system's order.</summary>
    public ImmutableArray<StateVariable> Before { get; }

    /// <summary>Those of <see cref="Before"/> whose value after the scan is defined.</summary>
    public ImmutableArray<StateVariable> Stepped { get; }

    /// <summary>Those of <see cref="Stepped"/> whose range is part of the invariant.</summary>
    public IEnumerable<StateVariable> Ranged => Stepped.Where(static state => state.Variable.Sort == Sort.Integer);

    public static CertificateCone Of(
        TransitionSystem system,
        IReadOnlyList<Variable> inInvariant,
        IEnumerable<Expression> readDirectly)
    {
        IReadOnlyList<Variable> direct = ExpressionGraph.Variables(readDirectly);
        IEnumerable<Variable> read = direct.Concat(inInvariant.SelectMany(variable => system.ReadByNext[variable.Index])).Distinct();
        HashSet<Variable> stepped = [.. inInvariant, .. RangeSupport(system, [.. inInvariant, .. read])];
        HashSet<Variable> all = [.. stepped, .. direct, .. stepped.SelectMany(variable => system.ReadByNext[variable.Index])];
        return new CertificateCone(
            [.. system.Inputs.Where(all.Contains)],
            [.. system.States.Where(state => all.Contains(state.Variable))],
            [.. system.States.Where(state => stepped.Contains(state.Variable))]);
    }

    /// <summary>The integer states among these, and those their ranges rest on, and so on.</summary>
    private static HashSet<Variable> RangeSupport(TransitionSystem system, IEnumerable<Variable> variables)
    {
        HashSet<Variable> ranged = [];
        Stack<Variable> open = new(variables);
        while (open.TryPop(out Variable? variable))
        {
            if (variable.Role == VariableRole.State && variable.Sort == Sort.Integer && ranged.Add(variable))
            {
                foreach (Variable source in ValueSources(system.States[variable.Index].Next))
                {
                    open.Push(source);
                }
            }
        }

        return ranged;
    }

    /// <summary>
    /// The variables that the interval of an integer expression is computed from: all of its leaves but
    /// those of conditions, except where a condition compares a branch with a limit and so narrows it.
    /// </summary>
    private static List<Variable> ValueSources(Expression root)
    {
        List<Variable> sources = [];
        HashSet<Expression> seen = [];
        Stack<Expression> open = new([root]);
        while (open.TryPop(out Expression? expression))
        {
            if (!seen.Add(expression))
            {
                continue;
            }

            if (expression.Variable is Variable variable)
            {
                sources.Add(variable);
            }

            bool choice = expression.Kind == ExpressionKind.IfThenElse;
            bool narrows = choice && expression.Operands[0].Kind is ExpressionKind.Less or ExpressionKind.LessOrEqual;
            ImmutableArray<Expression> values = choice ? expression.Operands[1..] : expression.Operands;
            foreach (Expression operand in narrows ? values.AddRange(expression.Operands[0].Operands) : values)
            {
                open.Push(operand);
            }
        }

        return sources;
    }
}
