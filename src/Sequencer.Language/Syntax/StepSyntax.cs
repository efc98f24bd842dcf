using Sequencer.Text;

namespace Sequencer.Language.Syntax;

/// <summary>The first line of a step.</summary>
internal sealed record StepSyntax(NumberSyntax Number, TextSyntax Title, TextSpan Span) : StatementSyntax(Span);
