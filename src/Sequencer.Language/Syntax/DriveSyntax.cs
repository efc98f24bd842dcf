using Sequencer.Text;

namespace Sequencer.Language.Syntax;

/// <summary><c>open XV1 after 5 s for 10 s while X until Y</c>.</summary>
internal sealed record DriveSyntax(
    WordSyntax Verb,
    WordSyntax Name,
    AmountSyntax? After,
    AmountSyntax? For,
    bool OnceABatch,
    ExpressionSyntax? AtEach,
    ExpressionSyntax? While,
    ExpressionSyntax? Until,
    TextSpan Span) : StepLineSyntax(Span);
