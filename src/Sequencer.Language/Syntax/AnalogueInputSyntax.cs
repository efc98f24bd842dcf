using Sequencer.Text;

namespace Sequencer.Language.Syntax;

/// <summary>An input with a range.</summary>
internal sealed record AnalogueInputSyntax(
    WordSyntax Name,
    NumberSyntax Minimum,
    NumberSyntax Maximum,
    WordSyntax Unit,
    WordSyntax Address,
    TextSyntax Description,
    AmountSyntax? BadAfter,
    ExpressionSyntax? UsableWhile,
    TextSpan Span) : DeclarationSyntax(Name, Span);
