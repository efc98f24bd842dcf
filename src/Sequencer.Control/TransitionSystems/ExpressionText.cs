using System.Globalization;

namespace Sequencer.Control.TransitionSystems;

/// <summary>Expressions as prefix text, for messages, hashes and debugging.</summary>
public static class ExpressionText
{
    private const int LongestShown = 2000;

    /// <summary>The whole expression as one prefix term, cut where it grows too long to read.</summary>
    public static string Write(Expression root)
    {
        Dictionary<Expression, string> texts = [];
        foreach (Expression expression in ExpressionGraph.InOrder([root]))
        {
            string text = Node(expression, operand => texts[operand]);
            texts[expression] = text.Length <= LongestShown ? text : string.Concat(text.AsSpan(0, LongestShown), " ...)");
        }

        return texts[root];
    }

    /// <summary>One node, its operands named by <paramref name="name"/>.</summary>
    public static string Node(Expression expression, Func<Expression, string> name) => expression.Kind switch
    {
        ExpressionKind.Constant when expression.Sort == Sort.Boolean => expression.Value == 1 ? "true" : "false",
        ExpressionKind.Constant => expression.Value.ToString(CultureInfo.InvariantCulture),
        ExpressionKind.Variable => expression.Variable!.Name,
        ExpressionKind.Scale => FormattableString.Invariant($"(* {expression.Value} {name(expression.Operands[0])})"),
        _ => $"({Symbol(expression.Kind)} {string.Join(' ', expression.Operands.Select(name))})",
    };

    private static string Symbol(ExpressionKind kind) => kind switch
    {
        ExpressionKind.Not => "not",
        ExpressionKind.And => "and",
        ExpressionKind.Or => "or",
        ExpressionKind.Equal => "=",
        ExpressionKind.Less => "<",
        ExpressionKind.LessOrEqual => "<=",
        ExpressionKind.Add => "+",
        ExpressionKind.IfThenElse => "ite",
        _ => throw new System.Diagnostics.UnreachableException($"no symbol for {kind}"),
    };
}
