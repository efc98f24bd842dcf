using Sequencer.Text;

namespace Sequencer.Language.Syntax;

/// <summary>How long a condition must have been so, and have been gone, before that counts; null where it is not said.</summary>
internal sealed record DelaysSyntax(AmountSyntax? On, AmountSyntax? Off, TextSpan Span) : SyntaxNode(Span);
