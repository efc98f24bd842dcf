using System.Collections.Immutable;
using Sequencer.Text;

namespace Sequencer.Language.Syntax;

/// <summary><c>go 40 and 45 when X</c>; no target at all is <c>finish</c>.</summary>
internal sealed record GoSyntax(ImmutableArray<NumberSyntax> Targets, ExpressionSyntax When, TimesSyntax? AtMost, TextSpan Span) : StepLineSyntax(Span);
