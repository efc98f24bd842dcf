using Sequencer.Text;

namespace Sequencer.Language.Syntax;

/// <summary><c>expect 12 min</c>.</summary>
internal sealed record ExpectSyntax(AmountSyntax Time, TextSpan Span) : StepLineSyntax(Span);
