using System.Collections.Immutable;
using Sequencer.Text;

namespace Sequencer.Language.Syntax;

/// <summary>Two or more conditions joined by <c>and</c> (<see cref="All"/>) or by <c>or</c>.</summary>
internal sealed record JunctionExpression(bool All, ImmutableArray<ExpressionSyntax> Parts, TextSpan Span)
    : ExpressionSyntax(Span, Parts.Max(part => part.Depth) + 1);
