using Sequencer.Text;

namespace Sequencer.Language.Syntax;

/// <summary><c>start only when X "why not"</c>.</summary>
internal sealed record StartSyntax(ExpressionSyntax Condition, TextSyntax Message, TextSpan Span) : StatementSyntax(Span);
