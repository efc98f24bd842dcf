using Sequencer.Text;

namespace Sequencer.Language.Parsing;

/// <summary>One optional part of a statement: the keyword that begins it, what it holds, and where the keyword stands.</summary>
internal sealed record Clause(string Keyword, object Value, TextSpan Span);
