using System.Text;
using Sequencer.Control.TransitionSystems;

namespace Sequencer.Testing.Verifiers;

/// <summary>
/// A transition system as constrained Horn clauses in SMT-LIB 2 (logic HORN): a solution is an invariant, so "sat" says that the
/// requirement holds and "unsat" that it fails.
/// </summary>
public static class HornText
{
    public static string Write(TransitionSystem system)
    {
        StringBuilder text = new("(set-logic HORN)\n");
        text.Append($"(declare-fun reached ({string.Join(' ', system.States.Select(state => SortOf(state.Variable)))}) Bool)\n");
        text.Append($"(assert (reached {string.Join(' ', system.States.Select(state => Value(state.Variable.Sort, state.Initial)))}))\n");
        string before = $"(reached {string.Join(' ', system.States.Select(state => Name(state.Variable)))})";
        Rule(text, system, before, [.. system.States.Select(state => state.Next)], names => $"(reached {string.Join(' ', names)})");
        Rule(text, system, before, [system.Requirements[0].Holds], names => names[0]);
        return text.Append("(check-sat)\n").ToString();
    }

    private static void Rule(StringBuilder text, TransitionSystem system, string before, Expression[] roots, Func<string[], string> conclusion)
    {
        Expression[] assumed = [.. system.Assumptions.Select(assumption => assumption.Holds)];
        Variable[] variables = [.. system.States.Select(state => state.Variable), .. system.Inputs];
        text.Append($"(assert (forall ({string.Join(' ', variables.Select(variable => $"({Name(variable)} {SortOf(variable)})"))})\n");
        Dictionary<Expression, string> names = [];
        int open = 0;
        foreach (Expression expression in ExpressionGraph.InOrder([.. roots, .. assumed]))
        {
            string node = expression.Kind switch
            {
                ExpressionKind.Constant => Value(expression.Sort, expression.Value),
                ExpressionKind.Variable => Name(expression.Variable!),
                ExpressionKind.Scale => $"(* {Value(Sort.Integer, expression.Value)} {names[expression.Operands[0]]})",
                _ => ExpressionText.Node(expression, operand => names[operand]),
            };
            names[expression] = expression.Operands.IsEmpty ? node : $"t{expression.Id}";
            if (!expression.Operands.IsEmpty)
            {
                text.Append($"(let (({names[expression]} {node}))\n");
                open++;
            }
        }

        string ranges = string.Join(' ', system.Inputs.Where(input => input.Sort == Sort.Integer)
            .Select(input => $"(<= {Value(Sort.Integer, input.Range.Minimum)} {Name(input)} {Value(Sort.Integer, input.Range.Maximum)})"));
        string kept = string.Join(' ', assumed.Select(assumption => names[assumption]));
        text.Append($"(=> (and true {before} {ranges} {kept}) {conclusion([.. roots.Select(root => names[root])])})");
        text.Append(')', open + 2).Append('\n');
    }

    private static string Name(Variable variable) => $"{(variable.Role == VariableRole.Input ? 'i' : 's')}{variable.Index}";

    private static string SortOf(Variable variable) => variable.Sort == Sort.Boolean ? "Bool" : "Int";

    private static string Value(Sort sort, long value) =>
        sort == Sort.Boolean ? (value == 1 ? "true" : "false") : value < 0 ? $"(- {-value})" : $"{value}";
}
