using Sequencer.Text;

namespace Sequencer.Language.Syntax;

/// <summary><c>quantity rate</c>.</summary>
internal sealed record ModuleParameterSyntax(WordSyntax Kind, WordSyntax Name, TextSpan Span) : SyntaxNode(Span);
