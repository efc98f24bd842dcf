using Sequencer.Text;

namespace Sequencer.Language.Syntax;

/// <summary><c>held at most 8 h then stop "Held too long"</c>.</summary>
internal sealed record HeldLimitSyntax(AmountSyntax Time, WordSyntax Reaction, TextSyntax Message, TextSpan Span) : StatementSyntax(Span);
