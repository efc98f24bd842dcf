using System.Collections.Immutable;
using Sequencer.Text;

namespace Sequencer.StructuredText.Syntax;

/// <summary>A statement.</summary>
public abstract record StatementSyntax(SourceSpan Span);

/// <summary><c>target := value;</c></summary>
public sealed record AssignmentSyntax(PathSyntax Target, ExpressionSyntax Value, SourceSpan Span) : StatementSyntax(Span);

/// <summary>A call of a block instance: <c>T1(IN := x, PT := T#5s, Q => y);</c></summary>
public sealed record CallStatementSyntax(PathSyntax Instance, ImmutableArray<ArgumentSyntax> Arguments, SourceSpan Span) : StatementSyntax(Span);

/// <summary><c>IF</c> with its <c>ELSIF</c> branches, tried in order, and <c>ELSE</c>.</summary>
public sealed record IfSyntax(ImmutableArray<IfBranchSyntax> Branches, ImmutableArray<StatementSyntax> Otherwise, SourceSpan Span) : StatementSyntax(Span);

/// <summary>A condition and what is done when it is the first to be true.</summary>
public sealed record IfBranchSyntax(ExpressionSyntax Condition, ImmutableArray<StatementSyntax> Body);

/// <summary><c>CASE</c>: the first branch with a matching label, else <c>ELSE</c>.</summary>
public sealed record CaseSyntax(
    ExpressionSyntax Selector,
    ImmutableArray<CaseBranchSyntax> Branches,
    ImmutableArray<StatementSyntax> Otherwise,
    SourceSpan Span) : StatementSyntax(Span);

public sealed record CaseBranchSyntax(ImmutableArray<CaseLabelSyntax> Labels, ImmutableArray<StatementSyntax> Body);

/// <summary>A value, or a range where <see cref="Upper"/> is written.</summary>
public sealed record CaseLabelSyntax(ExpressionSyntax Lower, ExpressionSyntax? Upper, SourceSpan Span);

/// <summary><c>FOR variable := from TO to BY step DO</c>.</summary>
public sealed record ForSyntax(
    NameSyntax Variable,
    ExpressionSyntax From,
    ExpressionSyntax To,
    ExpressionSyntax? By,
    ImmutableArray<StatementSyntax> Body,
    SourceSpan Span) : StatementSyntax(Span);

/// <summary><c>WHILE condition DO</c>.</summary>
public sealed record WhileSyntax(ExpressionSyntax Condition, ImmutableArray<StatementSyntax> Body, SourceSpan Span) : StatementSyntax(Span);

/// <summary><c>REPEAT ... UNTIL condition</c>.</summary>
public sealed record RepeatSyntax(ImmutableArray<StatementSyntax> Body, ExpressionSyntax Until, SourceSpan Span) : StatementSyntax(Span);

/// <summary><c>EXIT</c>, <c>CONTINUE</c> or <c>RETURN</c>.</summary>
public sealed record JumpSyntax(JumpKind Kind, SourceSpan Span) : StatementSyntax(Span);

/// <summary>
/// <c>name := value</c>, <c>name => target</c> (<see cref="IsOutput"/>, the value is then a path), or a
/// value alone.
/// </summary>
public sealed record ArgumentSyntax(NameSyntax? Name, ExpressionSyntax Value, bool IsOutput, SourceSpan Span);
