using Sequencer.Text;

namespace Sequencer.Language.Syntax;

/// <summary>A demand that outlives its step, until another one is entered.</summary>
internal sealed record KeepSyntax(WordSyntax Name, WordSyntax Position, NumberSyntax Until, TextSpan Span) : StepLineSyntax(Span);
