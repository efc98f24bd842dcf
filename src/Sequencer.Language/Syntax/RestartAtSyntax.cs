using Sequencer.Text;

namespace Sequencer.Language.Syntax;

/// <summary><c>restart at step 80</c>.</summary>
internal sealed record RestartAtSyntax(NumberSyntax Step, TextSpan Span) : StepLineSyntax(Span);
