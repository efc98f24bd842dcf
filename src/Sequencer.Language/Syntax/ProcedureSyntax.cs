using Sequencer.Text;

namespace Sequencer.Language.Syntax;

/// <summary>The line <c>procedure</c>.</summary>
internal sealed record ProcedureSyntax(TextSpan Span) : StatementSyntax(Span);
