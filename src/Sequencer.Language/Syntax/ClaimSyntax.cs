using Sequencer.Text;

namespace Sequencer.Language.Syntax;

/// <summary><c>claim R100.SKID limit 30 min then hold "Skid is busy", released while held</c>.</summary>
internal sealed record ClaimSyntax(
    WordSyntax Equipment,
    AmountSyntax Limit,
    WordSyntax Reaction,
    TextSyntax Message,
    bool ReleasedWhileHeld,
    TextSpan Span) : StepLineSyntax(Span);
