using Sequencer.Text;

namespace Sequencer.Language.Parsing;

/// <summary>One optional part of a statement: the keyword that begins it, what it holds, where the keyword stands, and all of it with a comma before it.</summary>
internal sealed record Clause(string Keyword, object Value, TextSpan Span)
{
    public TextSpan Whole { get; init; }
}
