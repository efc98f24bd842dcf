using Sequencer.Text;

namespace Sequencer.Language.Syntax;

/// <summary>What is taken for granted: a rate (<see cref="Signal"/>, <see cref="Rises"/>, <see cref="Rate"/>) within <see cref="Tolerance"/>; or a condition that never holds.</summary>
internal sealed record AssumeSyntax(
    WordSyntax Name,
    TextSyntax Title,
    WordSyntax? Signal,
    bool Rises,
    AmountSyntax? Rate,
    AmountSyntax? Tolerance,
    ExpressionSyntax? Never,
    WordSyntax? MonitoredElse,
    TextSpan Span) : DeclarationSyntax(Name, Span);
