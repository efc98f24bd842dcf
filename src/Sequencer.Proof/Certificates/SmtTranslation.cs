using System.Collections.Immutable;
using System.Diagnostics;
using System.Globalization;
using Sequencer.Control.TransitionSystems;

namespace Sequencer.Proof.Certificates;

/// <summary>
/// Expressions as definitions: what is used in more than one place, or lies deep, is defined once and
/// named, so that the text is no larger than the shared graph.
/// </summary>
internal sealed class SmtTranslation
{
    /// <summary>A deeper term is given a name; well below <see cref="SmtReader.DeepestNesting"/>.</summary>
    private const int DeepestTerm = 12;

    private readonly string _prefix;
    private readonly IReadOnlyDictionary<Expression, string> _knownNames;
    private readonly Dictionary<Expression, SmtTerm> _terms = [];
    private readonly Dictionary<Expression, int> _uses = [];
    private readonly ImmutableArray<SmtDefinition>.Builder _definitions = ImmutableArray.CreateBuilder<SmtDefinition>();

    /// <param name="roots">All that is translated.</param>
    /// <param name="prefix">Start of the names of shared terms.</param>
    /// <param name="knownNames">Names a reader knows already; these expressions are always defined by them.</param>
    public SmtTranslation(IReadOnlyCollection<Expression> roots, string prefix, IReadOnlyDictionary<Expression, string> knownNames)
    {
        _prefix = prefix;
        _knownNames = knownNames;
        Expression[] ordered = ExpressionGraph.InOrder(roots);
        foreach (Expression used in ordered.SelectMany(static expression => expression.Operands).Concat(roots))
        {
            _uses[used] = _uses.GetValueOrDefault(used) + 1;
        }

        foreach (Expression expression in ordered)
        {
            _terms[expression] = Share(expression, Translate(expression));
        }
    }

    /// <summary>The shared terms, each after those it uses.</summary>
    public ImmutableArray<SmtDefinition> Definitions => _definitions.ToImmutable();

    /// <summary>A root, by the names in <see cref="Definitions"/>.</summary>
    public SmtTerm Term(Expression root) => _terms[root];

    private SmtTerm Share(Expression expression, SmtTerm term)
    {
        bool known = _knownNames.TryGetValue(expression, out string? name);
        bool small = expression.Operands.IsEmpty || (expression.Kind == ExpressionKind.Not && expression.Operands[0].Operands.IsEmpty);
        if (!known && (small || (_uses[expression] < 2 && term.Depth < DeepestTerm)))
        {
            return term;
        }

        name ??= _prefix + (_definitions.Count + 1).ToString(CultureInfo.InvariantCulture);
        _definitions.Add(new SmtDefinition(name, expression.Sort, term));
        return SmtTerm.Name(name);
    }

    private SmtTerm Translate(Expression expression)
    {
        IEnumerable<SmtTerm> operands = expression.Operands.Select(operand => _terms[operand]);
        return expression.Kind switch
        {
            ExpressionKind.Constant when expression.Sort == Sort.Boolean => SmtTerm.Word(expression.Value == 1 ? "true" : "false"),
            ExpressionKind.Constant => Integer(expression.Value),
            ExpressionKind.Variable => SmtTerm.Name(VariableOf(expression).Name),
            ExpressionKind.Not => SmtTerm.Apply("not", operands),
            ExpressionKind.And => SmtTerm.Apply("and", operands),
            ExpressionKind.Or => SmtTerm.Apply("or", operands),
            ExpressionKind.Equal => SmtTerm.Apply("=", operands),
            ExpressionKind.Less => SmtTerm.Apply("<", operands),
            ExpressionKind.LessOrEqual => SmtTerm.Apply("<=", operands),
            ExpressionKind.Add => SmtTerm.Apply("+", operands),
            ExpressionKind.Scale => SmtTerm.Apply("*", [Integer(expression.Value), .. operands]),
            ExpressionKind.IfThenElse => SmtTerm.Apply("ite", operands),
            _ => throw new UnreachableException($"no SMT-LIB for {expression.Kind}"),
        };
    }

    /// <summary>SMT-LIB has no negative numerals: -5 is written as the application of a minus.</summary>
    public static SmtTerm Integer(long value)
    {
        string digits = value.ToString(CultureInfo.InvariantCulture);
        return value < 0 ? SmtTerm.Apply("-", SmtTerm.Word(digits[1..])) : SmtTerm.Word(digits);
    }

    public static SmtTerm Constant(Variable variable, long value) =>
        variable.Sort == Sort.Boolean ? SmtTerm.Word(value == 1 ? "true" : "false") : Integer(value);

    private static Variable VariableOf(Expression expression) =>
        expression.Variable ?? throw new UnreachableException("a variable expression without its variable");
}
