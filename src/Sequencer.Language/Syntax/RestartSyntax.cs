using Sequencer.Text;

namespace Sequencer.Language.Syntax;

/// <summary><c>after power loss held, restart begins with 60 s wait</c>.</summary>
internal sealed record RestartSyntax(AmountSyntax? Wait, TextSpan Span) : StatementSyntax(Span);
