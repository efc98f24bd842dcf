using System.Collections.Immutable;
using Sequencer.Text;

namespace Sequencer.Language.Syntax;

/// <summary>What outputs need in order to start.</summary>
internal sealed record PermissiveSyntax(
    WordSyntax Name,
    TextSyntax Title,
    ImmutableArray<WordSyntax> Outputs,
    ExpressionSyntax Condition,
    AmountSyntax? Patience,
    WordSyntax? Reaction,
    TextSpan Span) : DeclarationSyntax(Name, Span);
