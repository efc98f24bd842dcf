using Sequencer.Text;

namespace Sequencer.Language.Syntax;

/// <summary><c>override of I2 at most 30 min role Maintenance "Probe out for calibration"</c>.</summary>
internal sealed record OverrideSyntax(WordSyntax Protection, AmountSyntax? AtMost, WordSyntax Role, TextSyntax Reason, TextSpan Span)
    : StatementSyntax(Span);
