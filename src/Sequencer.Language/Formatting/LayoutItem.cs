using System.Collections.Immutable;
using Sequencer.Language.Parsing;
using Sequencer.Language.Syntax;

namespace Sequencer.Language.Formatting;

/// <summary>What stands one under the other in a file: blank lines, lines with a comment alone, statements.</summary>
internal abstract record LayoutItem;

/// <summary>One empty line or several in a row.</summary>
internal sealed record BlankItem : LayoutItem;

/// <summary>A comment that has a line to itself, from its strokes on.</summary>
internal sealed record CommentItem(string Comment) : LayoutItem;

/// <summary>A statement, its tokens, the lines they were written on, and the text that holds them.</summary>
internal sealed record StatementItem(StatementSyntax Statement, ImmutableArray<Token> Tokens, ImmutableArray<LayoutRow> Rows, string Written) : LayoutItem
{
    /// <summary>Whether it stands below a module's first line, where it may not be readable without its parameters.</summary>
    public bool IsInModule { get; init; }

    /// <summary>What the statement's kind says of its place: declarations stand at the margin or in a module, steps in a procedure, lines in a step.</summary>
    public int Indentation => Statement switch
    {
        _ when IsInModule => 2,
        StepLineSyntax => 4,
        StepSyntax or JoinSyntax => 2,
        _ => 0,
    };

    public bool IsDeclaration => IsInModule || Statement is not (StepLineSyntax or StepSyntax or JoinSyntax);

    /// <summary>Whether an empty line stands before it, and before the comments right above it.</summary>
    public bool IsSetOff => !IsInModule && Statement is StepSyntax or JoinSyntax or SectionSyntax or ModuleSyntax;

    public string FirstWord => Tokens[0].Text;
}

/// <summary>One line of a statement: its first token, the one behind its last, and the comment behind them, which may also stand alone.</summary>
internal sealed record LayoutRow(int From, int To, string? Comment);
