using Sequencer.Language.Units;
using Sequencer.Text;

namespace Sequencer.Language.Syntax;

/// <summary>A number as written, exact; <see cref="Decimals"/> is how many digits stand after the point.</summary>
internal sealed record NumberSyntax(Rational Value, int Decimals, TextSpan Span) : SyntaxNode(Span);
