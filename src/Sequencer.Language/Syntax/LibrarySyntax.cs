using Sequencer.Text;

namespace Sequencer.Language.Syntax;

/// <summary><c>library 1</c>.</summary>
internal sealed record LibrarySyntax(NumberSyntax Version, TextSpan Span) : StatementSyntax(Span);
