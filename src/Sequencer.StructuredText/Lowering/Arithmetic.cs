using Sequencer.Control.TransitionSystems;
using Sequencer.StructuredText.Syntax;
using Sequencer.StructuredText.Types;
using Sequencer.Text;

namespace Sequencer.StructuredText.Lowering;

/// <summary>
/// Integer and time arithmetic. The result is proved to lie in its type, from the ranges of what it is made of
/// and the conditions on the way; where it may not, that is reported, so that no controller's way of wrapping
/// round or stopping at the limit matters.
/// </summary>
internal sealed class Arithmetic
{
    private readonly LoweringContext _context;
    private readonly ExpressionBuilder _builder;

    public Arithmetic(LoweringContext context)
    {
        _context = context;
        _builder = context.Builder;
    }

    public TypedExpression? Negate(TypedExpression operand, RangeFacts facts, SourceSpan span) =>
        operand.Type.IsReal ? operand
        : operand.Type.Family is TypeFamily.Integer or TypeFamily.Duration
            ? Scaled(-1, operand, operand.Type.Base, facts, span)
            : Wrong(span, "an integer or a time", operand.Type);

    public TypedExpression? Binary(BinaryOperator kind, TypedExpression left, TypedExpression right, RangeFacts facts, SourceSpan span)
    {
        if (RealOf(left.Type, right.Type) is { } real)
        {
            return new TypedExpression(_builder.Constant(0), real);
        }

        if (ResultType(kind, left.Type, right.Type) is not { } type)
        {
            return Wrong(span, $"two values that can be calculated with ({left.Type})", right.Type);
        }

        switch (kind)
        {
            case BinaryOperator.Add:
                return Sum(left, right, 1, type, facts, span);
            case BinaryOperator.Subtract:
                return Sum(left, right, -1, type, facts, span);
            case BinaryOperator.Multiply when Single(right, facts) is { } factor:
                return Scaled(factor, left, type, facts, span);
            case BinaryOperator.Multiply when Single(left, facts) is { } factor:
                return Scaled(factor, right, type, facts, span);
            case BinaryOperator.Multiply:
                return Report(StructuredTextDiagnostics.NotLinear(span, "a product of two variables"));
            case BinaryOperator.Power:
                return Power(left, right, type, facts, span);
            default:
                return Divide(kind == BinaryOperator.Modulo, left, right, type, facts, span);
        }
    }

    /// <summary>The value with a range that fits the type, proved; else reported.</summary>
    public Expression Fit(TypedExpression value, DataType type, RangeFacts facts, SourceSpan span)
    {
        IntegerRange range = facts.RangeOf(value.Value);
        if (!type.Range.Contains(range) && !facts.IsImpossible)
        {
            Report(StructuredTextDiagnostics.MayLeaveRange(span, range.ToString(), type.Name, type.Range));
        }

        return type.Range.Contains(value.Value.Range) ? value.Value : Limit(value.Value, type.Range.Contains(range) ? range : type.Range);
    }

    /// <summary>The type both integers convert to without loss; null where there is none.</summary>
    public static DataType? Common(DataType left, DataType right) =>
        left.IsReal || right.IsReal ? RealOf(left, right)
        : left.Base == right.Base || right.Base == ElementaryTypes.Literal ? left.Base
        : left.Base == ElementaryTypes.Literal ? right.Base
        : left.Family != right.Family || left.Family is not (TypeFamily.Integer or TypeFamily.Duration) ? null
        : left.Base.Range.Contains(right.Base.Range) ? left.Base
        : right.Base.Range.Contains(left.Base.Range) ? right.Base
        : null;

    /// <summary>The greatest and least of two, of both.</summary>
    public Expression Limit(Expression value, IntegerRange range) =>
        _builder.Maximum(_builder.Minimum(value, _builder.Constant(range.Maximum)), _builder.Constant(range.Minimum));

    private static DataType? ResultType(BinaryOperator kind, DataType left, DataType right) => (left.Family, right.Family) switch
    {
        (TypeFamily.Integer, TypeFamily.Integer) => Common(left, right),
        (TypeFamily.Duration, TypeFamily.Duration) when kind is BinaryOperator.Add or BinaryOperator.Subtract => Common(left, right),
        (TypeFamily.Duration, TypeFamily.Integer) when kind is BinaryOperator.Multiply or BinaryOperator.Divide => left.Base,
        (TypeFamily.Integer, TypeFamily.Duration) when kind == BinaryOperator.Multiply => right.Base,
        _ => null,
    };

    /// <summary>The REAL or LREAL that comes of both, where one is such and the other a number.</summary>
    private static DataType? RealOf(DataType left, DataType right) =>
        !(left.IsReal || right.IsReal) || !(left.IsReal || left.Family == TypeFamily.Integer) || !(right.IsReal || right.Family == TypeFamily.Integer) ? null
        : new[] { left.Base, right.Base }.FirstOrDefault(type => type.Name == "LREAL")
            ?? new[] { left.Base, right.Base }.FirstOrDefault(type => type.Name == "REAL")
            ?? ElementaryTypes.RealLiteral;

    private TypedExpression? Sum(TypedExpression left, TypedExpression right, int sign, DataType type, RangeFacts facts, SourceSpan span)
    {
        IntegerRange first = facts.RangeOf(left.Value);
        IntegerRange second = facts.RangeOf(right.Value);
        Int128 minimum = (Int128)first.Minimum + (sign > 0 ? second.Minimum : -(Int128)second.Maximum);
        Int128 maximum = (Int128)first.Maximum + (sign > 0 ? second.Maximum : -(Int128)second.Minimum);
        if (minimum < long.MinValue || maximum > long.MaxValue)
        {
            return Leaves(minimum, maximum, type, facts, span);
        }

        Expression augend = WithinReach(left.Value, first, 1);
        Expression addend = WithinReach(right.Value, second, 1);
        return Checked(_builder.Add(augend, sign > 0 ? addend : _builder.Scale(-1, addend)), type, facts, span);
    }

    private TypedExpression? Scaled(long factor, TypedExpression operand, DataType type, RangeFacts facts, SourceSpan span)
    {
        IntegerRange range = facts.RangeOf(operand.Value);
        Int128 first = (Int128)factor * range.Minimum;
        Int128 second = (Int128)factor * range.Maximum;
        if (!Holds(type, Int128.Min(first, second), Int128.Max(first, second)))
        {
            return Leaves(Int128.Min(first, second), Int128.Max(first, second), type, facts, span);
        }

        Expression value = range.Minimum == range.Maximum ? _builder.Constant(range.Minimum) : WithinReach(operand.Value, range, factor);
        return Checked(_builder.Scale(factor, value), type, facts, span);
    }

    /// <summary>The proved range made visible where the declared one times the factor could pass 64 bits.</summary>
    private Expression WithinReach(Expression value, IntegerRange range, long factor)
    {
        Int128 reach = Int128.Max(Int128.Abs(value.Range.Minimum), Int128.Abs(value.Range.Maximum)) * Int128.Abs(factor);
        return reach < long.MaxValue / 2 ? value : Limit(value, range);
    }

    private TypedExpression? Power(TypedExpression left, TypedExpression right, DataType type, RangeFacts facts, SourceSpan span)
    {
        if (Single(left, facts) is not { } radix || Single(right, facts) is not { } exponent)
        {
            return Report(StructuredTextDiagnostics.NotLinear(span, "a power"));
        }

        const int LargestExponent = 62;
        Int128 result = 1;
        for (long turn = 0; turn < Math.Min(exponent, LargestExponent) && Int128.Abs(result) <= long.MaxValue; turn++)
        {
            result *= radix;
        }

        return exponent is < 0 or > LargestExponent || !Holds(type, result, result)
            ? Leaves(result, result, type, facts, span)
            : new TypedExpression(_builder.Constant((long)result), type);
    }

    private TypedExpression? Divide(bool remainder, TypedExpression left, TypedExpression right, DataType type, RangeFacts facts, SourceSpan span)
    {
        if (Single(right, facts) is not { } divisor)
        {
            return Report(StructuredTextDiagnostics.NotLinear(span, remainder ? "MOD by a variable" : "division by a variable"));
        }

        if (divisor == 0)
        {
            return Report(StructuredTextDiagnostics.DivisionByZero(span));
        }

        IntegerRange range = facts.RangeOf(left.Value);
        if (range.Minimum == long.MinValue || divisor == long.MinValue)
        {
            return Leaves(long.MinValue, long.MaxValue, type, facts, span);
        }

        Expression dividend = left.Value.Range == range ? left.Value : Limit(left.Value, range);
        ConstantDivision division = new(_builder, dividend, divisor);
        return Checked(remainder ? division.Remainder : division.Quotient, type, facts, span);
    }

    private static long? Single(TypedExpression value, RangeFacts facts)
    {
        IntegerRange range = value.Value.IsConstant ? value.Value.Range : facts.RangeOf(value.Value);
        return range.Minimum == range.Maximum ? range.Minimum : null;
    }

    private TypedExpression? Checked(Expression value, DataType type, RangeFacts facts, SourceSpan span)
    {
        IntegerRange range = facts.RangeOf(value);
        return type.Range.Contains(range) || facts.IsImpossible
            ? new TypedExpression(value, type)
            : Leaves(range.Minimum, range.Maximum, type, facts, span);
    }

    private static bool Holds(DataType type, Int128 minimum, Int128 maximum) => minimum >= type.Range.Minimum && maximum <= type.Range.Maximum;

    /// <summary>Reports it and goes on with a value of the type, so that other mistakes are found in the same pass.</summary>
    private TypedExpression? Leaves(Int128 minimum, Int128 maximum, DataType type, RangeFacts facts, SourceSpan span)
    {
        if (!facts.IsImpossible)
        {
            Report(StructuredTextDiagnostics.MayLeaveRange(span, FormattableString.Invariant($"{minimum}..{maximum}"), type.Name, type.Range));
        }

        return new TypedExpression(_builder.Constant(type.Default), type);
    }

    private TypedExpression? Wrong(SourceSpan span, string expected, DataType found) =>
        Report(StructuredTextDiagnostics.WrongType(span, expected, found.Name));

    private TypedExpression? Report(Diagnostic diagnostic)
    {
        _context.Diagnostics.Add(diagnostic);
        return null;
    }
}
