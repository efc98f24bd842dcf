using System.Collections.Immutable;
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
    private readonly NameResolution _names;
    private readonly LiteralLowering _literals;

    public ExpressionLowering(LoweringContext context)
    {
        _context = context;
        _builder = context.Builder;
        _arithmetic = new Arithmetic(context);
        _names = new NameResolution(context, this);
        _literals = new LiteralLowering(context);
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

    /// <summary>The place that a path stands for; null where it has been reported.</summary>
    public Place? Resolve(PathSyntax path, ScanPoint point) => _names.Resolve(path, point);

    /// <summary>
    /// The values for each elementary variable of the type; of an array or a structure only another such variable has them. A null stands for one
    /// that has been reported; the whole is null where nothing can be said.
    /// </summary>
    public ImmutableArray<Expression?>? Values(ExpressionSyntax syntax, DataType type, ScanPoint point)
    {
        if (!type.IsCompound)
        {
            return [LowerAs(syntax, type, point)?.Value];
        }

        if (syntax is not PathSyntax path)
        {
            Report(StructuredTextDiagnostics.WrongType(syntax.Span, $"a variable of type {type}", "something else"));
            return null;
        }

        if (Resolve(path, point) is not { } place)
        {
            return null;
        }

        if (place.Type is not { } found || !found.IsSameAs(type))
        {
            Report(StructuredTextDiagnostics.WrongType(path.Span, type.Name, NameResolution.Describe(place.Any)));
            return null;
        }

        ImmutableArray<Expression?> values = place.Read(_builder, point.Store, point.Facts);
        if (values.Contains(null))
        {
            Report(StructuredTextDiagnostics.ReadBeforeWritten(path.Span, path.ToString()));
        }

        return values;
    }

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

        if (from.Family == TypeFamily.Opaque || type.Family == TypeFamily.Opaque)
        {
            return Carry(value, from, type.Base, span);
        }

        if (from != type.Base && from.Family == TypeFamily.Duration && type.Family == TypeFamily.Duration)
        {
            return type.Base.Range.Contains(from.Range) || value.Value.IsConstant
                ? _arithmetic.Fit(value, type, facts, span)
                : Refuse(StructuredTextDiagnostics.ImplicitNarrowing(span, from.Name, type.Base.Name));
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

    /// <summary>Values that are not followed: whole numbers widen to REAL, REAL to LREAL (third edition, from memory); nothing else changes its type.</summary>
    private Expression? Carry(TypedExpression value, DataType from, DataType to, SourceSpan span)
    {
        bool widens = from == to
            || (from == ElementaryTypes.RealLiteral && to.IsReal)
            || (from.Family == TypeFamily.Integer && to.IsReal)
            || (from.Name == "REAL" && to.Name == "LREAL");
        if (widens)
        {
            return _builder.Constant(0);
        }

        return Refuse(from.IsReal && (to.IsReal || to.Family == TypeFamily.Integer)
            ? StructuredTextDiagnostics.ImplicitNarrowing(span, from == ElementaryTypes.RealLiteral ? "LREAL" : from.Name, to.Name)
            : StructuredTextDiagnostics.WrongType(span, to.Name, value.Type.Name));
    }

    /// <param name="syntax">The expression.</param>
    /// <param name="point">Where it stands.</param>
    /// <param name="wanted">Tells apart names that several enumerations have; nothing else.</param>
    public TypedExpression? Lower(ExpressionSyntax syntax, ScanPoint point, DataType? wanted = null)
    {
        switch (syntax)
        {
            case IntegerLiteralSyntax integer:
                return _literals.Integer(integer);
            case BooleanLiteralSyntax boolean:
                return new TypedExpression(_builder.Constant(boolean.Value), ElementaryTypes.Boolean);
            case DurationLiteralSyntax duration:
                return _literals.Duration(duration);
            case OpaqueLiteralSyntax literal:
                return _literals.Opaque(literal);
            case EnumerationLiteralSyntax literal:
                return _literals.Enumerator(literal);
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

    private TypedExpression? Name(PathSyntax path, ScanPoint point, DataType? wanted)
    {
        if (path.Selectors.IsEmpty && NameResolution.Find(_context, path.Root.Text, point.Frame) is null)
        {
            IReadOnlyList<(DataType Type, long Value)> enumerators = _context.Types.Enumerators(path.Root.Text);
            (DataType Type, long Value)[] fitting = enumerators.Count > 1 && wanted is not null
                ? [.. enumerators.Where(one => one.Type == wanted.Base)]
                : [.. enumerators];
            if (enumerators.Count > 0)
            {
                return fitting.Length == 1
                    ? new TypedExpression(_builder.Constant(fitting[0].Value), fitting[0].Type)
                    : Report(StructuredTextDiagnostics.AmbiguousEnumerator(path.Span, path.Root.Text));
            }
        }

        return Resolve(path, point) switch
        {
            null => null,
            { Any: Slot slot } place => place.Read(_builder, point.Store, point.Facts)[0] is { } value
                ? new TypedExpression(value, slot.Type)
                : Report(StructuredTextDiagnostics.ReadBeforeWritten(path.Span, path.ToString())),
            { Any: var other } => Report(StructuredTextDiagnostics.WrongType(path.Span, "a value", NameResolution.Describe(other))),
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
        syntax is PathSyntax { Selectors.IsEmpty: true } path && NameResolution.Find(_context, path.Root.Text, point.Frame) is Slot slot ? slot.Type : null;

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
        if (left.Type.Family == TypeFamily.Opaque || right.Type.Family == TypeFamily.Opaque)
        {
            return CompareOpaque(syntax, left.Type, right.Type);
        }

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

    /// <summary>Whatever the answer, it would depend on a value that is not followed.</summary>
    private TypedExpression? CompareOpaque(BinaryExpressionSyntax syntax, DataType left, DataType right)
    {
        bool reals = (left.IsReal || left.Family == TypeFamily.Integer) && (right.IsReal || right.Family == TypeFamily.Integer);
        if (!reals && left.Base != right.Base)
        {
            return Report(StructuredTextDiagnostics.WrongType(syntax.Right.Span, $"a value that compares with {left}", right.Name));
        }

        return Report(
            reals && syntax.Operator is BinaryOperator.Equal or BinaryOperator.NotEqual
                ? StructuredTextDiagnostics.RealEquality(syntax.Span)
                : StructuredTextDiagnostics.NotCompared(
                    syntax.Span,
                    reals ? "what depends on a number with a decimal point" : $"what depends on a {left}",
                    reals ? "controllers round differently" : "its values are not followed",
                    reals ? "measure and compare in whole numbers of a small unit" : "use an enumeration or a whole number"));
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
