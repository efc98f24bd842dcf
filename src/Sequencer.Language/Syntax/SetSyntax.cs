using Sequencer.Text;

namespace Sequencer.Language.Syntax;

/// <summary>An analogue output has a value while the step is active.</summary>
internal sealed record SetSyntax(WordSyntax Name, ExpressionSyntax Value, TextSpan Span) : StepLineSyntax(Span);
