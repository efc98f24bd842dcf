using System.Collections.Immutable;
using Sequencer.Text;

namespace Sequencer.StructuredText.Syntax;

/// <summary>A type where it is used or declared.</summary>
public abstract record TypeSyntax(SourceSpan Span);

/// <summary>An elementary, declared or standard type by its name.</summary>
public sealed record NamedTypeSyntax(NameSyntax Name, SourceSpan Span) : TypeSyntax(Span);

/// <summary><c>INT (0..100)</c>.</summary>
public sealed record SubrangeTypeSyntax(NameSyntax Base, ExpressionSyntax Lower, ExpressionSyntax Upper, SourceSpan Span) : TypeSyntax(Span);

/// <summary><c>(Idle, Running := 5)</c>.</summary>
public sealed record EnumerationTypeSyntax(ImmutableArray<EnumerationValueSyntax> Values, SourceSpan Span) : TypeSyntax(Span);

/// <summary>One name of an enumeration, with its number where one is written.</summary>
public sealed record EnumerationValueSyntax(NameSyntax Name, ExpressionSyntax? Value);
