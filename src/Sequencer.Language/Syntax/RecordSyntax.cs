using Sequencer.Text;

namespace Sequencer.Language.Syntax;

/// <summary>A value of the step that the batch report lists.</summary>
internal sealed record RecordSyntax(TextSyntax Title, ExpressionSyntax Value, TextSpan Span) : StepLineSyntax(Span);
