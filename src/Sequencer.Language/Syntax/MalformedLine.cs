using Sequencer.Text;

namespace Sequencer.Language.Syntax;

/// <summary>A line that is no statement. What it seems to begin and to declare is kept, so that nothing is said twice.</summary>
internal sealed record MalformedLine(LineFault Fault, string? Keyword, WordSyntax? Name, TextSpan Span) : StatementSyntax(Span);
