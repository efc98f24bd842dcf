using System.Collections.Immutable;
using Sequencer.Text;

namespace Sequencer.Language.Syntax;

/// <summary><c>voted LSHH "Tank at high-high" 2oo3 of LSHH1, LSHH2, LSHH3, if bad demand</c>.</summary>
internal sealed record VotedSyntax(
    WordSyntax Name,
    TextSyntax Title,
    WordSyntax Vote,
    ImmutableArray<ExpressionSyntax> Members,
    WordSyntax? IfBad,
    AmountSyntax? Differ,
    TextSpan Span) : DeclarationSyntax(Name, Span);
