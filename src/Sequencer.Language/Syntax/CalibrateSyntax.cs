using Sequencer.Text;

namespace Sequencer.Language.Syntax;

/// <summary><c>calibrate AT101 at most 30 min role Maintenance "Probe in buffer"</c>.</summary>
internal sealed record CalibrateSyntax(WordSyntax Signal, AmountSyntax AtMost, WordSyntax Role, TextSyntax Reason, TextSpan Span) : StatementSyntax(Span);
