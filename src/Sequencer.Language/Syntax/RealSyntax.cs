using System.Collections.Immutable;
using Sequencer.Text;

namespace Sequencer.Language.Syntax;

/// <summary>What is truly so in the plant beside a reading of it.</summary>
internal sealed record RealSyntax(
    WordSyntax Name,
    TextSyntax Description,
    NumberSyntax Minimum,
    NumberSyntax Maximum,
    WordSyntax Unit,
    WordSyntax Signal,
    AmountSyntax Within,
    ImmutableArray<RealRateSyntax> Rates,
    TextSpan Span) : DeclarationSyntax(Name, Span);
