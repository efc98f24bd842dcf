using System.Collections.Immutable;
using Sequencer.Text;

namespace Sequencer.StructuredText.Syntax;

/// <summary>A type where it is used or declared.</summary>
public abstract record TypeSyntax(SourceSpan Span);

/// <summary>An elementary, declared or standard type by its name.</summary>
public sealed record NamedTypeSyntax(NameSyntax Name, SourceSpan Span) : TypeSyntax(Span);

/// <summary><c>INT (0..100)</c>.</summary>
public sealed record SubrangeTypeSyntax(NameSyntax Base, ExpressionSyntax Lower, ExpressionSyntax Upper, SourceSpan Span) : TypeSyntax(Span);

/// <summary><c>(Idle, Running := 5)</c>, with the type of its numbers before it where one is written.</summary>
public sealed record EnumerationTypeSyntax(NameSyntax? Base, ImmutableArray<EnumerationValueSyntax> Values, SourceSpan Span) : TypeSyntax(Span);

/// <summary>One name of an enumeration, with its number where one is written.</summary>
public sealed record EnumerationValueSyntax(NameSyntax Name, ExpressionSyntax? Value);

/// <summary><c>ARRAY [1..4, 0..1] OF INT</c>.</summary>
public sealed record ArrayTypeSyntax(ImmutableArray<DimensionSyntax> Dimensions, TypeSyntax Element, SourceSpan Span) : TypeSyntax(Span);

/// <summary>The lowest and the highest index.</summary>
public sealed record DimensionSyntax(ExpressionSyntax Lower, ExpressionSyntax Upper, SourceSpan Span);

/// <summary><c>STRUCT name : type; ... END_STRUCT</c>.</summary>
public sealed record StructureTypeSyntax(ImmutableArray<VariableSyntax> Fields, SourceSpan Span) : TypeSyntax(Span);

/// <summary><c>STRING[80]</c>.</summary>
public sealed record StringTypeSyntax(NameSyntax Name, ExpressionSyntax Length, SourceSpan Span) : TypeSyntax(Span);
