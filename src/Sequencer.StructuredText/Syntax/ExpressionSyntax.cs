using System.Collections.Immutable;
using Sequencer.Text;

namespace Sequencer.StructuredText.Syntax;

/// <summary>
/// An expression. A long chain of equal operators leans to the left and is as deep as it is long: walk its
/// left side in a loop; everything else is bounded by the parser's depth limit.
/// </summary>
public abstract record ExpressionSyntax(SourceSpan Span);

/// <summary>An integer, typed where a type's name stands before it (<c>INT#5</c>).</summary>
public sealed record IntegerLiteralSyntax(long Value, string? TypeName, SourceSpan Span) : ExpressionSyntax(Span);

/// <summary>A number with a decimal point, kept so that its type can be refused where it stands.</summary>
public sealed record RealLiteralSyntax(SourceSpan Span) : ExpressionSyntax(Span);

public sealed record BooleanLiteralSyntax(bool Value, SourceSpan Span) : ExpressionSyntax(Span);

/// <summary>A duration, exact in milliseconds.</summary>
public sealed record DurationLiteralSyntax(decimal Milliseconds, SourceSpan Span) : ExpressionSyntax(Span);

/// <summary><c>STATE#Running</c>.</summary>
public sealed record EnumerationLiteralSyntax(NameSyntax Type, NameSyntax Value, SourceSpan Span) : ExpressionSyntax(Span);

/// <summary>A name, or names joined by points.</summary>
public sealed record PathSyntax(ImmutableArray<NameSyntax> Names, SourceSpan Span) : ExpressionSyntax(Span)
{
    public override string ToString() => string.Join('.', Names);
}

public sealed record UnaryExpressionSyntax(UnaryOperator Operator, ExpressionSyntax Operand, SourceSpan Span) : ExpressionSyntax(Span);

public sealed record BinaryExpressionSyntax(
    BinaryOperator Operator,
    ExpressionSyntax Left,
    ExpressionSyntax Right,
    SourceSpan Span) : ExpressionSyntax(Span);

/// <summary>A call of a function.</summary>
public sealed record FunctionCallSyntax(NameSyntax Function, ImmutableArray<ArgumentSyntax> Arguments, SourceSpan Span) : ExpressionSyntax(Span);

/// <summary>Stands where the parser has already reported that an expression is missing or unsupported.</summary>
public sealed record MissingExpressionSyntax(SourceSpan Span) : ExpressionSyntax(Span);
