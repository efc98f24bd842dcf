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

/// <summary>A literal of a type whose values are not followed: a number with a decimal point, a string, a date. <see cref="TypeName"/> is its type.</summary>
public sealed record OpaqueLiteralSyntax(string TypeName, SourceSpan Span) : ExpressionSyntax(Span);

public sealed record BooleanLiteralSyntax(bool Value, SourceSpan Span) : ExpressionSyntax(Span);

/// <summary>A duration, exact in milliseconds.</summary>
public sealed record DurationLiteralSyntax(decimal Milliseconds, SourceSpan Span) : ExpressionSyntax(Span);

/// <summary><c>STATE#Running</c>.</summary>
public sealed record EnumerationLiteralSyntax(NameSyntax Type, NameSyntax Value, SourceSpan Span) : ExpressionSyntax(Span);

/// <summary>A name, with what is picked out of it: <c>tank</c>, <c>T1.Q</c>, <c>flow[2, i].raw</c>.</summary>
public sealed record PathSyntax(NameSyntax Root, ImmutableArray<SelectorSyntax> Selectors, SourceSpan Span) : ExpressionSyntax(Span)
{
    public override string ToString() => $"{Root}{string.Concat(Selectors)}";
}

/// <summary>A part of a structure, of an array or of a block.</summary>
public abstract record SelectorSyntax(SourceSpan Span);

/// <summary><c>.name</c></summary>
public sealed record MemberSelectorSyntax(NameSyntax Name) : SelectorSyntax(Name.Span)
{
    public override string ToString() => $".{Name}";
}

/// <summary><c>[index, index]</c></summary>
public sealed record IndexSelectorSyntax(ImmutableArray<ExpressionSyntax> Indices, SourceSpan Span) : SelectorSyntax(Span)
{
    public override string ToString() => $"[{string.Join(", ", Indices.Select(index => index.Span.Text.ToString()))}]";
}

public sealed record UnaryExpressionSyntax(UnaryOperator Operator, ExpressionSyntax Operand, SourceSpan Span) : ExpressionSyntax(Span);

public sealed record BinaryExpressionSyntax(
    BinaryOperator Operator,
    ExpressionSyntax Left,
    ExpressionSyntax Right,
    SourceSpan Span) : ExpressionSyntax(Span);

/// <summary>A call of a function.</summary>
public sealed record FunctionCallSyntax(NameSyntax Function, ImmutableArray<ArgumentSyntax> Arguments, SourceSpan Span) : ExpressionSyntax(Span);

/// <summary>The first values of a structure, or of the members of a block: <c>(name := value, ...)</c>.</summary>
public sealed record StructureValueSyntax(ImmutableArray<ArgumentSyntax> Members, SourceSpan Span) : ExpressionSyntax(Span);

/// <summary>The first values of an array, <c>[1, 2, 3(0)]</c>.</summary>
public sealed record ArrayValueSyntax(ImmutableArray<ArrayPartSyntax> Parts, SourceSpan Span) : ExpressionSyntax(Span);

/// <summary>A value that is written once, or <c>times(value)</c>. The value is null in <c>times()</c>: the first value of the type.</summary>
public sealed record ArrayPartSyntax(long Times, ExpressionSyntax? Value, SourceSpan Span);

/// <summary>Stands where the parser has already reported that an expression is missing or unsupported.</summary>
public sealed record MissingExpressionSyntax(SourceSpan Span) : ExpressionSyntax(Span);
