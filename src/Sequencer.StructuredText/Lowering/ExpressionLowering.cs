using Sequencer.Control.TransitionSystems;
using Sequencer.StructuredText.Syntax;
using Sequencer.StructuredText.Types;
using Sequencer.Text;

namespace Sequencer.StructuredText.Lowering;

/// <summary>Expressions of the text as expressions of the system; null stands for "reported already".</summary>
internal sealed class ExpressionLowering
{
    private readonly LoweringContext _context;
    private readonly ExpressionBuilder _builder;
    private readonly Arithmetic _arithmetic;

    public ExpressionLowering(LoweringContext context)
    {
        _context = context;
        _builder = context.Builder;
        _arithmetic = new Arithmetic(context);
    }

    /// <summary>Runs a FUNCTION of the text; set by what runs statements.</summary>
    public Func<FunctionCallSyntax, UnitSyntax, ScanPoint, TypedExpression?>? UserFunction { get; init; }

    /// <summary>A constant's value, from literals and the constants that the frame or, without one, all can see.</summary>
    public TypedExpression? Constant(ExpressionSyntax syntax, BlockInstance? frame, DataType? wanted = null)
    {
        BlockInstance seen = frame ?? new BlockInstance("", "", null, VariableSectionKind.Local, new Origin(syntax.Span));
        ScanPoint point = new(seen, Store.Empty(), new RangeFacts(_builder), false, 0);
        TypedExpression? value = wanted is null ? Lower(syntax, point) : LowerAs(syntax, wanted, point);
        if (value is { Value.IsConstant: false })
        {
            _context.Diagnostics.Add(StructuredTextDiagnostics.ConstantExpected(syntax.Span));
            return null;
        }

        return value;
    }

    /// <summary>The value converted to a type and proved to lie in it.</summary>
    public TypedExpression? LowerAs(ExpressionSyntax syntax, DataType type, ScanPoint point) =>
        Lower(syntax, point, type) is { } value && Convert(value, type, point.Facts, syntax.Span) is { } converted
            ? new TypedExpression(converted, type)
            : null;

    public Expression? Condition(ExpressionSyntax syntax, ScanPoint point) => LowerAs(syntax, ElementaryTypes.Boolean, point)?.Value;

    /// <summary>What is assigned where <paramref name="type"/> is wanted: widened silently, never narrowed.</summary>
    public Expression? Convert(TypedExpression value, DataType type, RangeFacts facts, SourceSpan span)
    {
        DataType from = value.Type.Base;
        if (from == ElementaryTypes.Literal && type.Family is TypeFamily.Integer or TypeFamily.Bits)
        {
            if (!type.Range.Contains(value.Value.Range))
            {
                return Refuse(StructuredTextDiagnostics.OutsideType(span, value.Value.ToString(), type.Name, type.Range));
            }

            return value.Value;
        }

        if (from != type.Base && (from.Family != type.Family || from.Family is not (TypeFamily.Integer or TypeFamily.Bits)))
        {
            return Refuse(StructuredTextDiagnostics.WrongType(span, type.Name, value.Type.Name));
        }

        if (!type.Base.Range.Contains(from.Range))
        {
            return Refuse(StructuredTextDiagnostics.ImplicitNarrowing(span, from.Name, type.Base.Name));
        }

        return type.Family is TypeFamily.Integer or TypeFamily.Duration ? _arithmetic.Fit(value, type, facts, span) : value.Value;
    }

    /// <param name="syntax">The expression.</param>
    /// <param name="point">Where it stands.</param>
    /// <param name="wanted">Tells apart names that several enumerations have; nothing else.</param>
    public TypedExpression? Lower(ExpressionSyntax syntax, ScanPoint point, DataType? wanted = null)
    {
        switch (syntax)
        {
            case IntegerLiteralSyntax integer:
                return Integer(integer);
            case BooleanLiteralSyntax boolean:
                return new TypedExpression(_builder.Constant(boolean.Value), ElementaryTypes.Boolean);
            case DurationLiteralSyntax duration:
                return Duration(duration);
            case RealLiteralSyntax:
                return Report(StructuredTextDiagnostics.NotSupportedYet(syntax.Span, "a number with a decimal point"));
            case EnumerationLiteralSyntax literal:
                return Enumerator(literal);
            case PathSyntax path:
                return Name(path, point, wanted);
            case UnaryExpressionSyntax unary:
                return Unary(unary, point);
            case BinaryExpressionSyntax binary:
                return Chain(binary, point, wanted);
            case FunctionCallSyntax call:
                return Call(call, point, wanted);
            default:
                return null;
        }
    }

    private TypedExpression? Call(FunctionCallSyntax call, ScanPoint point, DataType? wanted)
    {
        if (_context.Units.TryGetValue(call.Function.Text, out UnitSyntax? unit) && unit.Kind == UnitKind.Function && UserFunction is not null)
        {
            return UserFunction(call, unit, point);
        }

        return new StandardFunctions(_context, this, _arithmetic).Call(call, point, wanted);
    }

    private TypedExpression? Integer(IntegerLiteralSyntax literal)
    {
        if (literal.TypeName is null)
        {
            return new TypedExpression(_builder.Constant(literal.Value), ElementaryTypes.Literal);
        }

        if (_context.Types.Find(literal.TypeName) is not { } type || type.Family is TypeFamily.Duration or TypeFamily.Enumeration)
        {
            return Report(StructuredTextDiagnostics.UnknownType(literal.Span, literal.TypeName));
        }

        if (!type.Range.Contains(literal.Value))
        {
            return Report(StructuredTextDiagnostics.OutsideType(literal.Span, FormattableString.Invariant($"{literal.Value}"), type.Name, type.Range));
        }

        return new TypedExpression(type.Family == TypeFamily.Boolean ? _builder.Constant(literal.Value == 1) : _builder.Constant(literal.Value), type);
    }

    private TypedExpression? Duration(DurationLiteralSyntax literal)
    {
        if (literal.Milliseconds != decimal.Truncate(literal.Milliseconds))
        {
            return Report(StructuredTextDiagnostics.FinerThanMillisecond(literal.Span));
        }

        IntegerRange range = ElementaryTypes.Time.Range;
        if (literal.Milliseconds < range.Minimum || literal.Milliseconds > range.Maximum)
        {
            return Report(StructuredTextDiagnostics.OutsideType(literal.Span, $"`{literal.Span.Text}`", "TIME in milliseconds", range));
        }

        return new TypedExpression(_builder.Constant((long)literal.Milliseconds), ElementaryTypes.Time);
    }

    private TypedExpression? Enumerator(EnumerationLiteralSyntax literal)
    {
        if (_context.Types.Find(literal.Type.Text) is not { Family: TypeFamily.Enumeration } type)
        {
            return Report(StructuredTextDiagnostics.UnknownType(literal.Type.Span, literal.Type.Text));
        }

        foreach ((string name, long value) in type.Enumerators)
        {
            if (string.Equals(name, literal.Value.Text, StringComparison.OrdinalIgnoreCase))
            {
                return new TypedExpression(_builder.Constant(value), type);
            }
        }

        return Report(StructuredTextDiagnostics.UndeclaredName(literal.Value.Span, literal.Span.Text.ToString()));
    }

    private TypedExpression? Name(PathSyntax path, ScanPoint point, DataType? wanted)
    {
        if (path.Names.Length == 1 && NameResolution.Find(_context, path.Names[0].Text, point.Frame) is null)
        {
            IReadOnlyList<(DataType Type, long Value)> enumerators = _context.Types.Enumerators(path.Names[0].Text);
            (DataType Type, long Value)[] fitting = enumerators.Count > 1 && wanted is not null
                ? [.. enumerators.Where(one => one.Type == wanted.Base)]
                : [.. enumerators];
            if (enumerators.Count > 0)
            {
                return fitting.Length == 1
                    ? new TypedExpression(_builder.Constant(fitting[0].Value), fitting[0].Type)
                    : Report(StructuredTextDiagnostics.AmbiguousEnumerator(path.Span, path.Names[0].Text));
            }
        }

        return NameResolution.Resolve(_context, path, point.Frame) switch
        {
            null => null,
            Slot slot when point.Store.Get(slot) is { } value => new TypedExpression(value, slot.Type),
            Slot slot => Report(StructuredTextDiagnostics.ReadBeforeWritten(path.Span, slot.Name)),
            Member other => Report(StructuredTextDiagnostics.WrongType(path.Span, "a value", NameResolution.Describe(other))),
        };
    }

    private TypedExpression? Unary(UnaryExpressionSyntax unary, ScanPoint point)
    {
        if (unary.Operator == UnaryOperator.Not)
        {
            return Condition(unary.Operand, point) is { } condition ? new TypedExpression(_builder.Not(condition), ElementaryTypes.Boolean) : null;
        }

        return Lower(unary.Operand, point) is { } operand ? _arithmetic.Negate(operand, point.Facts, unary.Span) : null;
    }

    /// <summary>A chain leans to the left and may be long: its left side is walked in a loop.</summary>
    private TypedExpression? Chain(BinaryExpressionSyntax last, ScanPoint point, DataType? wanted)
    {
        Stack<BinaryExpressionSyntax> chain = new();
        ExpressionSyntax first = last;
        while (first is BinaryExpressionSyntax binary)
        {
            chain.Push(binary);
            first = binary.Left;
        }

        ExpressionSyntax next = chain.Peek().Right;
        TypedExpression? left = Lower(first, point, wanted ?? TypeOf(next, point));
        foreach (BinaryExpressionSyntax binary in chain)
        {
            TypedExpression? right = Lower(binary.Right, point, left?.Type.Base);
            left = left is { } one && right is { } other ? Binary(binary, one, other, point.Facts) : null;
        }

        return left;
    }

    /// <summary>The type of a variable, to tell apart enumerators that stand before it.</summary>
    private DataType? TypeOf(ExpressionSyntax syntax, ScanPoint point) =>
        syntax is PathSyntax { Names.Length: 1 } path && NameResolution.Find(_context, path.Names[0].Text, point.Frame) is Slot slot ? slot.Type : null;

    private TypedExpression? Binary(BinaryExpressionSyntax syntax, TypedExpression left, TypedExpression right, RangeFacts facts)
    {
        switch (syntax.Operator)
        {
            case BinaryOperator.And or BinaryOperator.Or or BinaryOperator.Xor:
                return Logical(syntax, left, right);
            case BinaryOperator.Equal or BinaryOperator.NotEqual or BinaryOperator.Less or BinaryOperator.LessOrEqual
                or BinaryOperator.Greater or BinaryOperator.GreaterOrEqual:
                return Compare(syntax, left, right);
            default:
                return _arithmetic.Binary(syntax.Operator, left, right, facts, syntax.Span);
        }
    }

    private TypedExpression? Logical(BinaryExpressionSyntax syntax, TypedExpression left, TypedExpression right)
    {
        foreach ((TypedExpression operand, SourceSpan span) in new[] { (left, syntax.Left.Span), (right, syntax.Right.Span) })
        {
            if (operand.Type.Family == TypeFamily.Bits)
            {
                return Report(StructuredTextDiagnostics.NotSupportedYet(syntax.Span, "an operator on strings of bits"));
            }

            if (operand.Type.Family != TypeFamily.Boolean)
            {
                return Report(StructuredTextDiagnostics.WrongType(span, "BOOL", operand.Type.Name));
            }
        }

        return new TypedExpression(
            syntax.Operator switch
            {
                BinaryOperator.And => _builder.And(left.Value, right.Value),
                BinaryOperator.Or => _builder.Or(left.Value, right.Value),
                _ => _builder.Not(_builder.Equal(left.Value, right.Value)),
            },
            ElementaryTypes.Boolean);
    }

    private TypedExpression? Compare(BinaryExpressionSyntax syntax, TypedExpression left, TypedExpression right)
    {
        bool equality = syntax.Operator is BinaryOperator.Equal or BinaryOperator.NotEqual;
        bool ordered = left.Type.Family is TypeFamily.Integer or TypeFamily.Duration or TypeFamily.Bits;
        DataType? common = Arithmetic.Common(left.Type, right.Type);
        if (common is null || (!equality && !ordered))
        {
            return Report(StructuredTextDiagnostics.WrongType(syntax.Right.Span, $"a value that compares with {left.Type}", right.Type.Name));
        }

        foreach ((TypedExpression operand, SourceSpan span) in new[] { (left, syntax.Left.Span), (right, syntax.Right.Span) })
        {
            if (operand.Type == ElementaryTypes.Literal && !common.Range.Contains(operand.Value.Range))
            {
                return Report(StructuredTextDiagnostics.OutsideType(span, operand.Value.ToString(), common.Name, common.Range));
            }
        }

        return new TypedExpression(
            syntax.Operator switch
            {
                BinaryOperator.Equal => _builder.Equal(left.Value, right.Value),
                BinaryOperator.NotEqual => _builder.Not(_builder.Equal(left.Value, right.Value)),
                BinaryOperator.Less => _builder.Less(left.Value, right.Value),
                BinaryOperator.LessOrEqual => _builder.LessOrEqual(left.Value, right.Value),
                BinaryOperator.Greater => _builder.Greater(left.Value, right.Value),
                _ => _builder.GreaterOrEqual(left.Value, right.Value),
            },
            ElementaryTypes.Boolean);
    }

    private Expression? Refuse(Diagnostic diagnostic)
    {
        _context.Diagnostics.Add(diagnostic);
        return null;
    }

    private TypedExpression? Report(Diagnostic diagnostic)
    {
        _context.Diagnostics.Add(diagnostic);
        return null;
    }
}
