using Sequencer.Text;

namespace Sequencer.Language.Syntax;

/// <summary>A line inside a step.</summary>
internal abstract record StepLineSyntax(TextSpan Span) : StatementSyntax(Span);
