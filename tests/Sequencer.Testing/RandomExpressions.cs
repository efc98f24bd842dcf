using Sequencer.Control.TransitionSystems;

namespace Sequencer.Testing;

/// <summary>A growing pool of expressions of both sorts, combined at random; all values stay small enough to add.</summary>
internal sealed class RandomExpressions
{
    private const long LargestMagnitude = 1L << 40;

    private readonly ExpressionBuilder _builder;
    private readonly Random _random;
    private readonly List<Expression> _booleans;
    private readonly List<Expression> _integers;

    public RandomExpressions(ExpressionBuilder builder, Random random)
    {
        _builder = builder;
        _random = random;
        _booleans = [];
        _integers = [builder.Constant(0L), builder.Constant(7L)];
    }

    public void Offer(Expression expression)
    {
        bool small = Math.Max(Math.Abs(expression.Range.Minimum), Math.Abs(expression.Range.Maximum)) <= LargestMagnitude;
        if (small && !(expression.Sort == Sort.Boolean && expression.IsConstant))
        {
            (expression.Sort == Sort.Boolean ? _booleans : _integers).Add(expression);
        }
    }

    public void Grow(int expressions)
    {
        for (int count = 0; count < expressions; count++)
        {
            Offer(_random.Next(3) == 0 ? NewInteger() : NewBoolean());
        }
    }

    public Expression Boolean() => Pick(_booleans);

    public Expression Integer() => Pick(_integers);

    public Expression Any() => _random.Next(3) == 0 ? Integer() : Boolean();

    private Expression Pick(List<Expression> from)
    {
        int start = _random.Next(2) == 0 ? 0 : from.Count / 2;
        return from[_random.Next(start, from.Count)];
    }

    private Expression NewBoolean() => _random.Next(9) switch
    {
        0 => _builder.Not(Boolean()),
        1 => _builder.And(Boolean(), Boolean(), Boolean()),
        2 => _builder.Or(Boolean(), Boolean()),
        3 => _builder.Equal(Boolean(), Boolean()),
        4 => _builder.Equal(Integer(), Near()),
        5 => _builder.Less(Integer(), Near()),
        6 => _builder.LessOrEqual(Near(), Integer()),
        7 => _builder.Not(_builder.Equal(Integer(), Integer())),
        _ => _builder.IfThenElse(Boolean(), Boolean(), Boolean()),
    };

    private Expression NewInteger() => _random.Next(5) switch
    {
        0 => _builder.Add(Integer(), Integer(), _builder.Constant(_random.Next(-5, 6))),
        1 => _builder.Scale(_random.Next(-9, 10), Integer()),
        2 => _builder.Subtract(Integer(), Integer()),
        3 => _builder.Minimum(Integer(), Near()),
        _ => _builder.IfThenElse(Boolean(), Integer(), Integer()),
    };

    /// <summary>An integer expression, or a constant in the range of one: comparisons that can go both ways.</summary>
    private Expression Near()
    {
        Expression some = Integer();
        return _random.Next(2) == 0 ? some : _builder.Constant(_random.NextInt64(some.Range.Minimum, some.Range.Maximum + 1));
    }
}
