using System.Collections.Immutable;
using Sequencer.Language.Units;
using Sequencer.Text;

namespace Sequencer.Language.Programs;

/// <summary>
/// Asked from the entry of its step until it is answered, while Running; an entry forgets the answer given
/// before. Unanswered for <see cref="Limit"/> it asks for <see cref="Reaction"/>.
/// </summary>
public sealed record PromptAction(
    string Name,
    string Question,
    ImmutableArray<string> Answers,
    string Role,
    Duration Limit,
    Reaction Reaction,
    string Message,
    SourceSpan Span) : StepAction(Span);
