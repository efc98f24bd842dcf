namespace Sequencer.Control.TransitionSystems;

/// <summary>
/// Division by a constant in linear terms: long division in base 2, one choice a bit of the quotient. The
/// quotient is cut off towards zero and the remainder has the dividend's sign (second edition, Table 24,
/// from memory), so that quotient times divisor plus remainder is the dividend.
/// </summary>
public sealed class ConstantDivision
{
    private readonly ExpressionBuilder _builder;

    public ConstantDivision(ExpressionBuilder builder, Expression dividend, long divisor)
    {
        _builder = builder;
        Expression magnitude = Magnitude(dividend);
        (Expression quotient, Expression remainder) = Divide(magnitude, Math.Abs(divisor));
        Expression isPositive = builder.LessOrEqual(builder.Constant(0), dividend);
        Expression sameSign = divisor > 0 ? isPositive : builder.Not(isPositive);
        Quotient = builder.IfThenElse(sameSign, quotient, builder.Scale(-1, quotient));
        Remainder = builder.IfThenElse(isPositive, remainder, builder.Scale(-1, remainder));
    }

    public Expression Quotient { get; }

    public Expression Remainder { get; }

    private Expression Magnitude(Expression value)
    {
        Expression zero = _builder.Constant(0);
        Expression negated = _builder.Scale(-1, value);
        return _builder.Maximum(zero, _builder.Maximum(value, negated));
    }

    private (Expression Quotient, Expression Remainder) Divide(Expression magnitude, long divisor)
    {
        long largest = magnitude.Range.Maximum;
        int bits = 0;
        while ((Int128)divisor << bits <= largest)
        {
            bits++;
        }

        Expression remainder = magnitude;
        List<Expression> quotient = [_builder.Constant(0)];
        for (int bit = bits - 1; bit >= 0; bit--)
        {
            Expression step = _builder.Constant(divisor << bit);
            Expression fits = _builder.LessOrEqual(step, remainder);
            Expression reduced = _builder.Maximum(_builder.Subtract(remainder, step), _builder.Constant(0));
            quotient.Add(_builder.IfThenElse(fits, _builder.Constant(1L << bit), _builder.Constant(0)));
            remainder = _builder.Minimum(_builder.IfThenElse(fits, reduced, remainder), _builder.Constant((divisor << bit) - 1));
        }

        return (_builder.Minimum(_builder.Add(quotient), _builder.Constant(largest / divisor)), remainder);
    }
}
