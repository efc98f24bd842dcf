using Sequencer.Text;

namespace Sequencer.Language.Syntax;

/// <summary><c>limit 30 min then hold "why"</c>; a reaction, or a step to go to, or (neither) <c>go finish</c>.</summary>
internal sealed record LimitSyntax(
    AmountSyntax Time,
    WordSyntax? Reaction,
    NumberSyntax? GoTo,
    TextSyntax Message,
    TextSpan Span) : StepLineSyntax(Span);
