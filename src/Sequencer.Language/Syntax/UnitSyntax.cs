using Sequencer.Text;

namespace Sequencer.Language.Syntax;

/// <summary><c>unit T1 "Rinse water pit"</c>.</summary>
internal sealed record UnitSyntax(WordSyntax Name, TextSyntax Title, TextSpan Span) : StatementSyntax(Span);
