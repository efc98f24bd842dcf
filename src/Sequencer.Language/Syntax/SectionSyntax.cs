using Sequencer.Text;

namespace Sequencer.Language.Syntax;

/// <summary>The line <c>holding</c>, <c>restarting</c>, <c>stopping</c> or <c>aborting</c>.</summary>
internal sealed record SectionSyntax(WordSyntax Word, TextSpan Span) : StatementSyntax(Span);
