using Sequencer.Text;

namespace Sequencer.Language.Syntax;

/// <summary>The first line of a step.</summary>
internal sealed record StepSyntax(NumberSyntax Number, TextSyntax Title, ExpressionSyntax? OnlyIf, TextSpan Span) : StatementSyntax(Span);
