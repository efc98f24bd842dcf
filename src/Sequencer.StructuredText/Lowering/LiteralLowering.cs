using Sequencer.Control.TransitionSystems;
using Sequencer.StructuredText.Syntax;
using Sequencer.StructuredText.Types;
using Sequencer.Text;

namespace Sequencer.StructuredText.Lowering;

/// <summary>Literals with their types; null stands for "reported already".</summary>
internal sealed class LiteralLowering
{
    private readonly LoweringContext _context;
    private readonly ExpressionBuilder _builder;

    public LiteralLowering(LoweringContext context)
    {
        _context = context;
        _builder = context.Builder;
    }

    public TypedExpression? Integer(IntegerLiteralSyntax literal)
    {
        if (literal.TypeName is null)
        {
            return new TypedExpression(_builder.Constant(literal.Value), ElementaryTypes.Literal);
        }

        if (_context.Types.Find(literal.TypeName) is not { } type || type.Family is TypeFamily.Duration or TypeFamily.Enumeration || type.IsCompound || (type.Family == TypeFamily.Opaque && !type.IsReal))
        {
            return Report(StructuredTextDiagnostics.UnknownType(literal.Span, literal.TypeName));
        }

        if (type.IsReal)
        {
            return new TypedExpression(_builder.Constant(0), type);
        }

        if (!type.Range.Contains(literal.Value))
        {
            return Report(StructuredTextDiagnostics.OutsideType(literal.Span, FormattableString.Invariant($"{literal.Value}"), type.Name, type.Range));
        }

        return new TypedExpression(type.Family == TypeFamily.Boolean ? _builder.Constant(literal.Value == 1) : _builder.Constant(literal.Value), type);
    }

    public TypedExpression? Duration(DurationLiteralSyntax literal)
    {
        if (literal.Milliseconds != decimal.Truncate(literal.Milliseconds))
        {
            return Report(StructuredTextDiagnostics.FinerThanMillisecond(literal.Span));
        }

        DataType type = char.ToUpperInvariant(literal.Span.Text[0]) == 'L' ? ElementaryTypes.LongTime : ElementaryTypes.Time;
        IntegerRange range = type.Range;
        if (literal.Milliseconds < range.Minimum || literal.Milliseconds > range.Maximum)
        {
            return Report(StructuredTextDiagnostics.OutsideType(literal.Span, $"`{literal.Span.Text}`", $"{type} in milliseconds", range));
        }

        return new TypedExpression(_builder.Constant((long)literal.Milliseconds), type);
    }

    public TypedExpression? Enumerator(EnumerationLiteralSyntax literal)
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

    public TypedExpression? Opaque(OpaqueLiteralSyntax literal)
    {
        if (literal.TypeName == "LREAL" && !literal.Span.Text.Contains('#'))
        {
            return new TypedExpression(_builder.Constant(0), ElementaryTypes.RealLiteral);
        }

        return _context.Types.Find(literal.TypeName) is { Family: TypeFamily.Opaque } type
            ? new TypedExpression(_builder.Constant(0), type)
            : Report(StructuredTextDiagnostics.WrongType(literal.Span, "REAL or LREAL before `#`", literal.TypeName));
    }

    private TypedExpression? Report(Diagnostic diagnostic)
    {
        _context.Diagnostics.Add(diagnostic);
        return null;
    }
}
