using Sequencer.Text;

namespace Sequencer.Language.Syntax;

/// <summary><c>ask F220 to start</c>.</summary>
internal sealed record AskSyntax(WordSyntax Unit, TextSpan Span) : StepLineSyntax(Span);
