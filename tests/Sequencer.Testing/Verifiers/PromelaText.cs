using System.Text;
using Sequencer.Control.TransitionSystems;

namespace Sequencer.Testing.Verifiers;

/// <summary>
/// A transition system in Promela, the language of spin (Holzmann, "The Spin Model Checker", 2004): one process that picks the
/// inputs and makes a scan in one atomic step. Inputs and what lies between are hidden, so that only states are stored.
/// </summary>
public static class PromelaText
{
    /// <summary>Spin refuses much longer deterministic steps.</summary>
    private const int LongestStep = 400;

    public static string Write(TransitionSystem system)
    {
        Dictionary<Expression, string> names = [];
        StringBuilder text = new();
        List<string> scan = [];
        foreach (StateVariable state in system.States)
        {
            text.Append($"{TypeOf(state.Variable)} s{state.Variable.Index} = {state.Initial};\nhidden int n{state.Variable.Index};\n");
        }

        foreach (Variable input in system.Inputs)
        {
            text.Append($"hidden int i{input.Index};\n");
        }

        Expression[] roots = [.. system.States.Select(state => state.Next), .. system.Assumptions.Select(assumption => assumption.Holds), system.Requirements[0].Holds];
        foreach (Expression expression in ExpressionGraph.InOrder(roots))
        {
            if (expression.Operands.IsEmpty)
            {
                names[expression] = expression.Kind == ExpressionKind.Constant ? $"{expression.Value}"
                    : expression.Variable!.Role == VariableRole.Input ? $"i{expression.Variable.Index}" : $"s{expression.Variable.Index}";
            }
            else
            {
                text.Append($"hidden int t{expression.Id};\n");
                scan.Add($"t{expression.Id} = {Node(expression, [.. expression.Operands.Select(operand => names[operand])])}");
                names[expression] = $"t{expression.Id}";
            }
        }

        text.Append("active proctype scan() {\n  do\n  :: atomic {\n");
        foreach (Variable input in system.Inputs)
        {
            text.Append($"    select(i{input.Index} : {input.Range.Minimum} .. {input.Range.Maximum});\n");
        }

        string kept = string.Join(" && ", system.Assumptions.Select(assumption => names[assumption.Holds]).DefaultIfEmpty("1"));
        WriteSteps(text, scan);
        text.Append($"    ({kept});\n    assert({names[system.Requirements[0].Holds]});\n");
        WriteSteps(text,
        [
            .. system.States.Select(state => $"n{state.Variable.Index} = {names[state.Next]}"),
            .. system.States.Select(state => $"s{state.Variable.Index} = n{state.Variable.Index}"),
        ]);
        return text.Append("  }\n  od\n}\n").ToString();
    }

    private static void WriteSteps(StringBuilder text, IEnumerable<string> statements)
    {
        foreach (string[] chunk in statements.Chunk(LongestStep))
        {
            text.Append("    d_step {\n").AppendJoin(";\n", chunk.Select(statement => "      " + statement)).Append("\n    };\n");
        }
    }

    private static string TypeOf(Variable variable) =>
        variable.Sort == Sort.Boolean ? "bit" : variable.Range is { Minimum: >= 0, Maximum: < 256 } ? "byte" : variable.Range is { Minimum: >= short.MinValue, Maximum: <= short.MaxValue } ? "short" : "int";

    private static string Node(Expression expression, string[] operands) => expression.Kind switch
    {
        ExpressionKind.Not => $"(!{operands[0]})",
        ExpressionKind.And => $"({string.Join(" && ", operands)})",
        ExpressionKind.Or => $"({string.Join(" || ", operands)})",
        ExpressionKind.Equal => $"({operands[0]} == {operands[1]})",
        ExpressionKind.Less => $"({operands[0]} < {operands[1]})",
        ExpressionKind.LessOrEqual => $"({operands[0]} <= {operands[1]})",
        ExpressionKind.Add => $"({string.Join(" + ", operands)})",
        ExpressionKind.Scale => $"({expression.Value} * {operands[0]})",
        ExpressionKind.IfThenElse => $"({operands[0]} -> {operands[1]} : {operands[2]})",
        _ => throw new System.Diagnostics.UnreachableException($"no Promela for {expression.Kind}"),
    };
}
