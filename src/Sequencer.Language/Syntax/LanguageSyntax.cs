using Sequencer.Text;

namespace Sequencer.Language.Syntax;

/// <summary><c>language 1</c>.</summary>
internal sealed record LanguageSyntax(NumberSyntax Version, TextSpan Span) : StatementSyntax(Span);
