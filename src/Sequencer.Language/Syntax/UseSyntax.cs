using Sequencer.Text;

namespace Sequencer.Language.Syntax;

/// <summary><c>use "lib/dosing.seqlib"</c>.</summary>
internal sealed record UseSyntax(TextSyntax File, TextSpan Span) : StatementSyntax(Span);
