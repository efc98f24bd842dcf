using Sequencer.Control.TransitionSystems;

namespace Sequencer.Proof.ClauseLearning;

/// <summary>
/// The first facts: every Boolean state; the values of small enumerations; for other integers the
/// bounds that comparisons of the system draw, its initial value and the constants it is set to.
/// </summary>
internal sealed class FactHarvest
{
    /// <summary>An integer with no more values than this is spoken of value by value.</summary>
    private const long LargestEnumeration = 12;

    private readonly ExpressionBuilder _builder;
    private readonly FactTable _table;

    private FactHarvest(ExpressionBuilder builder)
    {
        _builder = builder;
        _table = new FactTable(builder);
    }

    public static FactTable Collect(TransitionSystem system, ExpressionBuilder builder)
    {
        FactHarvest harvest = new(builder);
        foreach (StateVariable state in system.States)
        {
            harvest.AddOwn(state);
        }

        Expression[] roots =
        [
            .. system.States.Select(state => state.Next),
            .. system.Assumptions.Select(assumption => assumption.Holds),
            .. system.Requirements.Select(requirement => requirement.Holds),
        ];
        foreach (Expression expression in ExpressionGraph.InOrder(roots))
        {
            harvest.AddComparison(expression);
        }

        return harvest._table;
    }

    private static bool IsEnumeration(Variable variable) => variable.Range.Maximum - variable.Range.Minimum < LargestEnumeration;

    private void AddOwn(StateVariable state)
    {
        Expression variable = _builder.Variable(state.Variable);
        if (state.Variable.Sort == Sort.Boolean)
        {
            _table.Add(variable);
        }
        else if (IsEnumeration(state.Variable))
        {
            for (long value = state.Variable.Range.Minimum; value <= state.Variable.Range.Maximum; value++)
            {
                _table.AddEqual(variable, value);
            }
        }
        else
        {
            AddAround(variable, state.Initial);
            foreach (long value in ConstantsOf(state.Next))
            {
                AddAround(variable, value);
            }
        }
    }

    /// <summary>The constants among the leaves of nested choices.</summary>
    private static IEnumerable<long> ConstantsOf(Expression next)
    {
        HashSet<Expression> seen = [];
        Stack<Expression> open = new([next]);
        while (open.TryPop(out Expression? expression))
        {
            if (!seen.Add(expression))
            {
                continue;
            }

            if (expression.Kind == ExpressionKind.IfThenElse)
            {
                open.Push(expression.Operands[1]);
                open.Push(expression.Operands[2]);
            }
            else if (expression.IsConstant)
            {
                yield return expression.Value;
            }
        }
    }

    private void AddAround(Expression variable, long value)
    {
        _table.AddAtMost([(variable, 1)], value);
        _table.AddAtMost([(variable, 1)], value - 1);
    }

    private void AddComparison(Expression comparison)
    {
        bool equal = comparison.Kind == ExpressionKind.Equal && comparison.Operands[0].Sort == Sort.Integer;
        if (!equal && comparison.Kind is not (ExpressionKind.Less or ExpressionKind.LessOrEqual))
        {
            return;
        }

        LinearForm? form = LinearForm.Difference(comparison.Operands[0], comparison.Operands[1]);
        if (form is null || form.Terms.Count == 0 || form.Terms.Values.Any(term => term.Variable.Variable!.Role == VariableRole.Input))
        {
            return;
        }

        // difference <= 0, or < 0, or both <= 0 and <= -1 where it is compared for equality
        long limit = -form.Constant;
        if (comparison.Kind != ExpressionKind.Less)
        {
            AddAtMost(form, limit);
        }

        if (comparison.Kind != ExpressionKind.LessOrEqual)
        {
            AddAtMost(form, limit - 1);
        }
    }

    private void AddAtMost(LinearForm form, long limit)
    {
        (Expression Variable, long Factor)[] terms = [.. form.Terms.Values];
        if (terms.Length > 1)
        {
            // One of the two signs only, so that a bound and its negation are the same fact.
            if (terms[0].Factor < 0)
            {
                terms = [.. terms.Select(term => (term.Variable, -term.Factor))];
                limit = -limit - 1;
            }

            _table.AddAtMost(terms, limit);
            return;
        }

        if (!IsEnumeration(terms[0].Variable.Variable!))
        {
            long factor = terms[0].Factor;
            long bound = factor > 0 ? Floor(limit, factor) : -Floor(limit, -factor) - 1;
            _table.AddAtMost([(terms[0].Variable, 1)], bound);
        }
    }

    private static long Floor(long dividend, long divisor) =>
        (dividend / divisor) - (dividend % divisor < 0 ? 1 : 0);
}
