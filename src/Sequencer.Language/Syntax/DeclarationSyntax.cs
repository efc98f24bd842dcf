using Sequencer.Text;

namespace Sequencer.Language.Syntax;

/// <summary>A line that declares a name.</summary>
internal abstract record DeclarationSyntax(WordSyntax Name, TextSpan Span) : StatementSyntax(Span);
