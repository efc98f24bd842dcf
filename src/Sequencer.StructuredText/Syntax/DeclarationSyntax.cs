using System.Collections.Immutable;
using Sequencer.Text;

namespace Sequencer.StructuredText.Syntax;

/// <summary>A declaration at the level of the file.</summary>
public abstract record DeclarationSyntax(SourceSpan Span);

/// <summary>One name of a <c>TYPE</c> section.</summary>
public sealed record TypeDeclarationSyntax(NameSyntax Name, TypeSyntax Type, ExpressionSyntax? Initial, SourceSpan Span) : DeclarationSyntax(Span);

/// <summary>A <c>FUNCTION</c>, <c>FUNCTION_BLOCK</c> or <c>PROGRAM</c>.</summary>
public sealed record UnitSyntax(
    UnitKind Kind,
    NameSyntax Name,
    TypeSyntax? ReturnType,
    ImmutableArray<VariableSectionSyntax> Sections,
    ImmutableArray<StatementSyntax> Body,
    SourceSpan Span) : DeclarationSyntax(Span);

/// <summary>A <c>VAR_GLOBAL</c> section that stands in the file itself.</summary>
public sealed record GlobalsSyntax(VariableSectionSyntax Section, SourceSpan Span) : DeclarationSyntax(Span);

/// <summary>A <c>CONFIGURATION</c>, its resources taken together.</summary>
public sealed record ConfigurationSyntax(
    NameSyntax Name,
    ImmutableArray<VariableSectionSyntax> Globals,
    ImmutableArray<ResourceSyntax> Resources,
    ImmutableArray<TaskSyntax> Tasks,
    ImmutableArray<ProgramInstanceSyntax> Programs,
    SourceSpan Span) : DeclarationSyntax(Span);
