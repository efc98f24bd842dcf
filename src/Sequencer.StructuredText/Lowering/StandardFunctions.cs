using Sequencer.Control.TransitionSystems;
using Sequencer.StructuredText.Syntax;
using Sequencer.StructuredText.Types;
using Sequencer.Text;

namespace Sequencer.StructuredText.Lowering;

/// <summary>
/// The standard functions that are read: ABS, MIN, MAX, LIMIT, SEL, MOVE and conversions between whole numbers,
/// strings of bits and BOOL. IEC 61131-3 (second edition) 2.5.1.5, from memory.
/// </summary>
internal sealed class StandardFunctions
{
    private readonly LoweringContext _context;
    private readonly ExpressionBuilder _builder;
    private readonly ExpressionLowering _expressions;
    private readonly Arithmetic _arithmetic;

    public StandardFunctions(LoweringContext context, ExpressionLowering expressions, Arithmetic arithmetic)
    {
        _context = context;
        _builder = context.Builder;
        _expressions = expressions;
        _arithmetic = arithmetic;
    }

    public TypedExpression? Call(FunctionCallSyntax call, ScanPoint point, DataType? wanted)
    {
        string name = call.Function.Text.ToUpperInvariant();
        string[]? formal = name switch
        {
            "ABS" or "MOVE" => ["IN"],
            "SQRT" or "LN" or "LOG" or "EXP" or "SIN" or "COS" or "TAN" or "ASIN" or "ACOS" or "ATAN" => ["IN"],
            "LIMIT" => ["MN", "IN", "MX"],
            "SEL" => ["G", "IN0", "IN1"],
            "MIN" or "MAX" => [.. Enumerable.Range(1, call.Arguments.Length).Select(number => FormattableString.Invariant($"IN{number}"))],
            _ when name.Contains("TO_", StringComparison.Ordinal) => ["IN"],
            _ => null,
        };
        if (formal is null)
        {
            return Report(Parsing.ReservedWords.StandardNames.Contains(name)
                ? StructuredTextDiagnostics.NotSupportedYet(call.Function.Span, $"function {name}")
                : StructuredTextDiagnostics.UndeclaredName(call.Function.Span, call.Function.Text));
        }

        TypedExpression[]? values = Arguments(call, formal, point, wanted);
        return values is null ? null : name switch
        {
            "MOVE" => values[0],
            _ when formal is ["IN"] && !name.Contains("TO_", StringComparison.Ordinal) && name != "ABS" => OfReal(values[0], call.Arguments[0].Span),
            "ABS" => Absolute(values[0], point.Facts, call.Span),
            "SEL" => Select(values, call),
            "MIN" or "MAX" => Extreme(name == "MIN", values, call.Span),
            "LIMIT" => Limit(values, call.Span),
            _ => ConvertTo(name, values[0], point.Facts, call),
        };
    }

    private TypedExpression[]? Arguments(FunctionCallSyntax call, string[] formal, ScanPoint point, DataType? wanted)
    {
        if (call.Arguments.Length != formal.Length || formal.Length == 0)
        {
            Report(StructuredTextDiagnostics.Expected(call.Span, $"{Math.Max(1, formal.Length)} argument(s)", FormattableString.Invariant($"{call.Arguments.Length}")));
            return null;
        }

        TypedExpression?[] values = new TypedExpression?[formal.Length];
        for (int index = 0; index < formal.Length; index++)
        {
            ArgumentSyntax argument = call.Arguments[index];
            int place = argument.Name is null ? index : Array.FindIndex(formal, one => string.Equals(one, argument.Name.Text, StringComparison.OrdinalIgnoreCase));
            if (place < 0 || argument.IsOutput || values[place] is not null)
            {
                Report(StructuredTextDiagnostics.NoSuchMember(argument.Span, argument.Name?.Text ?? "argument", call.Function.Text));
                return null;
            }

            values[place] = _expressions.Lower(argument.Value, point, wanted);
        }

        return values.All(value => value is not null) ? [.. values.Select(value => value.GetValueOrDefault())] : null;
    }

    private TypedExpression? Absolute(TypedExpression value, RangeFacts facts, SourceSpan span)
    {
        if (value.Type.IsReal)
        {
            return value;
        }

        if (value.Type.Family != TypeFamily.Integer)
        {
            return Report(StructuredTextDiagnostics.WrongType(span, "an integer", value.Type.Name));
        }

        return facts.RangeOf(value.Value).Minimum >= 0 ? value
            : _arithmetic.Negate(value, facts, span) is { } negated
            ? new TypedExpression(_builder.Maximum(_builder.Maximum(value.Value, negated.Value), _builder.Constant(0)), value.Type.Base)
            : null;
    }

    private TypedExpression? Select(TypedExpression[] values, FunctionCallSyntax call)
    {
        if (values[0].Type.Family != TypeFamily.Boolean)
        {
            return Report(StructuredTextDiagnostics.WrongType(call.Arguments[0].Span, "BOOL", values[0].Type.Name));
        }

        return CommonOf(values.Skip(1), call.Span) is { } type
            ? new TypedExpression(_builder.IfThenElse(values[0].Value, values[2].Value, values[1].Value), type)
            : null;
    }

    private TypedExpression? Extreme(bool least, TypedExpression[] values, SourceSpan span) =>
        CommonOf(values, span) is { } type && IsOrdered(type, span)
            ? new TypedExpression(
                values.Select(value => value.Value).Aggregate((left, right) => least ? _builder.Minimum(left, right) : _builder.Maximum(left, right)),
                type)
            : null;

    /// <summary>MIN(MAX(IN, MN), MX).</summary>
    private TypedExpression? Limit(TypedExpression[] values, SourceSpan span) =>
        CommonOf(values, span) is { } type && IsOrdered(type, span)
            ? new TypedExpression(_builder.Minimum(_builder.Maximum(values[1].Value, values[0].Value), values[2].Value), type)
            : null;

    private bool IsOrdered(DataType type, SourceSpan span)
    {
        if (type.IsReal || type.Family is TypeFamily.Integer or TypeFamily.Duration)
        {
            return true;
        }

        Report(StructuredTextDiagnostics.WrongType(span, "integers or times", type.Name));
        return false;
    }

    private DataType? CommonOf(IEnumerable<TypedExpression> values, SourceSpan span)
    {
        DataType? common = null;
        foreach (TypedExpression value in values)
        {
            DataType? next = common is null ? value.Type.Base : Arithmetic.Common(common, value.Type);
            if (next is null)
            {
                Report(StructuredTextDiagnostics.WrongType(span, $"values of one type ({common})", value.Type.Name));
                return null;
            }

            common = next;
        }

        return common;
    }

    /// <summary><c>INT_TO_DINT</c>, <c>TO_DINT</c>: the same number, proved to fit; strings of bits are the number's own bits.</summary>
    private TypedExpression? ConvertTo(string name, TypedExpression value, RangeFacts facts, FunctionCallSyntax call)
    {
        int split = name.StartsWith("TO_", StringComparison.Ordinal) ? -1 : name.IndexOf("_TO_", StringComparison.Ordinal);
        DataType? from = split < 0 ? value.Type.Base : _context.Types.Find(name[..split]);
        DataType? to = _context.Types.Find(name[(split < 0 ? 3 : split + 4)..]);
        if (from is not null && to is not null && (from.Family == TypeFamily.Opaque || to.Family == TypeFamily.Opaque))
        {
            return _expressions.Convert(value, from, facts, call.Arguments[0].Span) is null ? null : Carried(from, to, name, call);
        }

        if (from is null || to is null || !IsConvertible(from) || !IsConvertible(to))
        {
            return Report(from is null || to is null
                ? StructuredTextDiagnostics.UndeclaredName(call.Function.Span, call.Function.Text)
                : StructuredTextDiagnostics.NotSupportedYet(call.Function.Span, $"conversion {name}"));
        }

        if (_expressions.Convert(value, from, facts, call.Arguments[0].Span) is not { } source)
        {
            return null;
        }

        Expression number = from.Sort == Sort.Boolean ? _builder.IfThenElse(source, _builder.Constant(1), _builder.Constant(0)) : source;
        if (to.Sort == Sort.Boolean)
        {
            return new TypedExpression(_builder.Not(_builder.Equal(number, _builder.Constant(0))), to);
        }

        Expression image = from.Family == TypeFamily.Bits || to.Family == TypeFamily.Bits ? SameBits(number, to.Range) : number;
        return new TypedExpression(_arithmetic.Fit(new TypedExpression(image, to), to, facts, call.Span), to);
    }

    /// <summary>A function of numbers with a decimal point.</summary>
    private TypedExpression? OfReal(TypedExpression value, SourceSpan span) =>
        value.Type.IsReal ? value : Report(StructuredTextDiagnostics.WrongType(span, "REAL or LREAL", value.Type.Name));

    /// <summary>Into a value that is not followed anything may go; out of one nothing comes.</summary>
    private TypedExpression? Carried(DataType from, DataType to, string name, FunctionCallSyntax call) =>
        to.Family == TypeFamily.Opaque
            ? new TypedExpression(_builder.Constant(0), to)
            : Report(StructuredTextDiagnostics.NotCompared(
                call.Span,
                $"what {name} gives",
                from.IsReal ? "controllers round differently" : "the values of its argument are not followed",
                from.IsReal ? "measure and calculate in whole numbers of a small unit" : "use an enumeration or a whole number"));

    private static bool IsConvertible(DataType type) => type.Family is TypeFamily.Boolean or TypeFamily.Integer or TypeFamily.Bits;

    /// <summary>Two's complement between a signed number and a string of bits of the same length.</summary>
    private Expression SameBits(Expression number, IntegerRange to)
    {
        long span = to.Maximum - to.Minimum + 1;
        Expression wrappedDown = _builder.Subtract(number, _builder.Constant(span));
        Expression wrappedUp = _builder.Add(number, _builder.Constant(span));
        return _builder.IfThenElse(
            _builder.Greater(number, _builder.Constant(to.Maximum)),
            Within(wrappedDown, to, number.Range.Maximum <= to.Maximum + span),
            _builder.IfThenElse(
                _builder.Less(number, _builder.Constant(to.Minimum)),
                Within(wrappedUp, to, number.Range.Minimum >= to.Minimum - span),
                Within(number, to, true)));
    }

    /// <summary>Where one turn brings every number into the range, that range is made visible; else it is left to be reported.</summary>
    private Expression Within(Expression value, IntegerRange range, bool known) => known ? _arithmetic.Limit(value, range) : value;

    private TypedExpression? Report(Diagnostic diagnostic)
    {
        _context.Diagnostics.Add(diagnostic);
        return null;
    }
}
