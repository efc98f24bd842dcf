using System.Collections.Immutable;
using Sequencer.Text;

namespace Sequencer.Language.Syntax;

/// <summary>A question to the operator, with every answer that there is.</summary>
internal sealed record PromptSyntax(
    WordSyntax Name,
    TextSyntax Question,
    ImmutableArray<TextSyntax> Answers,
    WordSyntax Role,
    AmountSyntax Limit,
    WordSyntax Reaction,
    TextSyntax Message,
    TextSpan Span) : StepLineSyntax(Span);
