using Sequencer.Text;

namespace Sequencer.Language.Syntax;

/// <summary><c>advance by hand role Commissioning</c>.</summary>
internal sealed record AdvanceSyntax(WordSyntax Role, TextSpan Span) : StatementSyntax(Span);
