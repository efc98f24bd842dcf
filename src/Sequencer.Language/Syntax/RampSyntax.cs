using Sequencer.Text;

namespace Sequencer.Language.Syntax;

/// <summary>An analogue output goes evenly from one value to another, and stays there while the step is active.</summary>
internal sealed record RampSyntax(WordSyntax Name, AmountSyntax From, AmountSyntax To, AmountSyntax Time, TextSpan Span) : StepLineSyntax(Span);
