using Sequencer.Control.TransitionSystems;

namespace Sequencer.StructuredText.Lowering;

/// <summary>
/// What the conditions on the way to a statement say about the ranges of expressions. Expressions are values,
/// not variables, so a fact stays true whatever is assigned later.
/// </summary>
internal sealed class RangeFacts
{
    /// <summary>How far below an expression its range is worked out anew; the cost grows with its power.</summary>
    private const int DeepestLook = 3;
    private const int DeepestAssumption = 2;
    private const int MostAlternatives = 64;

    private readonly ExpressionBuilder _builder;
    /// <summary>How many layers are looked through before they are put together.</summary>
    private const int MostLayers = 16;

    private readonly RangeFacts? _below;
    private readonly int _layer;
    private readonly Dictionary<Expression, IntegerRange> _known = [];

    public RangeFacts(ExpressionBuilder builder)
    {
        _builder = builder;
    }

    private RangeFacts(RangeFacts below)
    {
        _builder = below._builder;
        IsImpossible = below.IsImpossible;
        if (below._layer < MostLayers)
        {
            _below = below;
            _layer = below._layer + 1;
            return;
        }

        for (RangeFacts? facts = below; facts is not null; facts = facts._below)
        {
            foreach ((Expression expression, IntegerRange range) in facts._known)
            {
                _known.TryAdd(expression, range);
            }
        }
    }

    /// <summary>The conditions contradict one another: no run comes here.</summary>
    public bool IsImpossible { get; private set; }

    public RangeFacts Assume(Expression condition) => Assume(condition, DeepestAssumption);

    public IntegerRange RangeOf(Expression expression) => RangeOf(expression, DeepestLook);

    private RangeFacts Assume(Expression condition, int depth)
    {
        RangeFacts facts = new(this);
        Stack<Expression> open = new([condition]);
        Stack<Expression> alternatives = new();
        while (open.TryPop(out Expression? fact))
        {
            facts.Take(fact, open, alternatives, depth);
        }

        // What is certain may rule out some of them.
        while (alternatives.TryPop(out Expression? fact))
        {
            facts.TakeHull([.. fact.Operands.Select(alternative => facts.Assume(alternative, depth - 1))]);
        }

        return facts;
    }

    private void Take(Expression fact, Stack<Expression> open, Stack<Expression> alternatives, int depth)
    {
        if (fact.IsConstant)
        {
            IsImpossible |= fact.IsFalse;
            return;
        }

        Narrow(fact, new IntegerRange(1, 1));
        switch (fact.Kind)
        {
            case ExpressionKind.And:
                Push(fact.Operands, open);
                break;
            case ExpressionKind.Or when depth > 0 && fact.Operands.Length <= MostAlternatives:
                alternatives.Push(fact);
                break;
            case ExpressionKind.Not:
                TakeNegation(fact.Operands[0], open, depth);
                break;
            case ExpressionKind.Less:
                TakeOrder(fact.Operands[0], fact.Operands[1], 1, depth);
                break;
            case ExpressionKind.LessOrEqual:
                TakeOrder(fact.Operands[0], fact.Operands[1], 0, depth);
                break;
            case ExpressionKind.Equal when fact.Operands[0].Sort == Sort.Integer:
                TakeOrder(fact.Operands[0], fact.Operands[1], 0, depth);
                TakeOrder(fact.Operands[1], fact.Operands[0], 0, depth);
                break;
        }
    }

    private void TakeNegation(Expression denied, Stack<Expression> open, int depth)
    {
        Narrow(denied, new IntegerRange(0, 0));
        if (denied.Kind == ExpressionKind.Or)
        {
            Push(denied.Operands.Select(_builder.Not), open);
        }
        else if (denied.Kind == ExpressionKind.Equal && denied.Operands[0].Sort == Sort.Integer)
        {
            Exclude(denied.Operands[0], denied.Operands[1], depth);
            Exclude(denied.Operands[1], denied.Operands[0], depth);
        }
    }

    private static void Push(IEnumerable<Expression> facts, Stack<Expression> open)
    {
        foreach (Expression fact in facts)
        {
            open.Push(fact);
        }
    }

    /// <summary>One of the alternatives holds: what all of them bound is bounded by their union.</summary>
    private void TakeHull(RangeFacts[] alternatives)
    {
        RangeFacts[] possible = [.. alternatives.Where(alternative => !alternative.IsImpossible)];
        if (possible.Length == 0)
        {
            IsImpossible = true;
            return;
        }

        foreach (Expression expression in possible[0]._known.Keys.Where(key => key.Sort == Sort.Integer).ToList())
        {
            if (possible.All(alternative => alternative._known.ContainsKey(expression)))
            {
                Narrow(expression, possible.Select(alternative => alternative._known[expression]).Aggregate(static (left, right) => left.Union(right)));
            }
        }
    }

    /// <summary>small + gap &lt;= large.</summary>
    private void TakeOrder(Expression small, Expression large, long gap, int depth)
    {
        IntegerRange smallRange = RangeOf(small, depth);
        IntegerRange largeRange = RangeOf(large, depth);
        Narrow(small, smallRange.Minimum, largeRange.Maximum - gap);
        Narrow(large, smallRange.Minimum + gap, largeRange.Maximum);
        if (!small.IsConstant && !large.IsConstant)
        {
            Expression difference = _builder.Subtract(small, large);
            Narrow(difference, difference.Range.Minimum, -gap);
        }
    }

    private void Exclude(Expression expression, Expression value, int depth)
    {
        if (value.IsConstant)
        {
            IntegerRange range = RangeOf(expression, depth);
            Narrow(expression, range.Minimum == value.Value ? range.Minimum + 1 : range.Minimum, range.Maximum == value.Value ? range.Maximum - 1 : range.Maximum);
        }
    }

    private void Narrow(Expression expression, long minimum, long maximum)
    {
        if (minimum > maximum)
        {
            IsImpossible = true;
        }
        else
        {
            Narrow(expression, new IntegerRange(minimum, maximum));
        }
    }

    /// <summary>A sum is known without its constant, and negated too, so that it is found in both directions.</summary>
    private void Narrow(Expression expression, IntegerRange range)
    {
        (Expression core, long offset) = SplitConstant(expression);
        if (core.IsConstant)
        {
            return;
        }

        IntegerRange known = Lookup(core);
        long minimum = Math.Max(known.Minimum, range.Minimum - offset);
        long maximum = Math.Min(known.Maximum, range.Maximum - offset);
        if (minimum > maximum)
        {
            IsImpossible = true;
            return;
        }

        _known[core] = new IntegerRange(minimum, maximum);
        if (core.Kind is ExpressionKind.Add or ExpressionKind.Scale)
        {
            _known[_builder.Scale(-1, core)] = new IntegerRange(-maximum, -minimum);
        }
    }

    private IntegerRange Lookup(Expression expression)
    {
        for (RangeFacts? facts = this; facts is not null; facts = facts._below)
        {
            if (facts._known.TryGetValue(expression, out IntegerRange known))
            {
                return known;
            }
        }

        return expression.Range;
    }

    private (Expression Core, long Offset) SplitConstant(Expression expression)
    {
        if (expression.Kind != ExpressionKind.Add || expression.Operands.FirstOrDefault(operand => operand.IsConstant) is not { } constant)
        {
            return (expression, 0);
        }

        return (_builder.Add(expression.Operands.Where(operand => operand != constant)), constant.Value);
    }

    private IntegerRange RangeOf(Expression expression, int depth)
    {
        (Expression core, long offset) = SplitConstant(expression);
        IntegerRange range = Lookup(core);
        if (depth > 0)
        {
            IntegerRange computed = core.Kind switch
            {
                ExpressionKind.Add => core.Operands.Select(operand => RangeOf(operand, depth - 1)).Aggregate(static (sum, next) => sum + next),
                ExpressionKind.Scale => core.Value * RangeOf(core.Operands[0], depth - 1),
                ExpressionKind.IfThenElse => RangeOfChoice(core, depth - 1),
                _ => range,
            };
            range = Intersect(range, computed);
        }

        return new IntegerRange(range.Minimum + offset, range.Maximum + offset);
    }

    private IntegerRange RangeOfChoice(Expression choice, int depth)
    {
        RangeFacts then = Assume(choice.Operands[0], depth);
        RangeFacts otherwise = Assume(_builder.Not(choice.Operands[0]), depth);
        return then.IsImpossible ? otherwise.RangeOf(choice.Operands[2], depth)
            : otherwise.IsImpossible ? then.RangeOf(choice.Operands[1], depth)
            : then.RangeOf(choice.Operands[1], depth).Union(otherwise.RangeOf(choice.Operands[2], depth));
    }

    private static IntegerRange Intersect(IntegerRange left, IntegerRange right)
    {
        long minimum = Math.Max(left.Minimum, right.Minimum);
        long maximum = Math.Min(left.Maximum, right.Maximum);
        return minimum <= maximum ? new IntegerRange(minimum, maximum) : left;
    }
}
