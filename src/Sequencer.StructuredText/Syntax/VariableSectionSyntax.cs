using System.Collections.Immutable;
using Sequencer.Text;

namespace Sequencer.StructuredText.Syntax;

/// <summary>A <c>VAR ... END_VAR</c> section.</summary>
public sealed record VariableSectionSyntax(
    VariableSectionKind Kind,
    Retention Retention,
    bool IsConstant,
    ImmutableArray<VariableSyntax> Variables,
    SourceSpan Span);

/// <summary>
/// One declared name. <see cref="Initial"/> is a value, or values of an array, a structure or the members of a block.
/// </summary>
public sealed record VariableSyntax(
    NameSyntax Name,
    AddressSyntax? Address,
    TypeSyntax Type,
    ExpressionSyntax? Initial);

/// <summary>A directly represented address as written, <c>%IX0.0</c>.</summary>
public sealed record AddressSyntax(string Text, SourceSpan Span);

/// <summary>What is said about keeping a value through a loss of power.</summary>
public enum Retention
{
    Unsaid,
    Retain,
    NonRetain,
}

public enum VariableSectionKind
{
    Local,
    Input,
    Output,
    InOut,
    Temporary,
    External,
    Global,
}
