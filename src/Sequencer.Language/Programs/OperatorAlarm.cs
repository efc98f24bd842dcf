using Sequencer.Text;

namespace Sequencer.Language.Programs;

/// <summary>
/// Raised while the condition possibly holds. With <see cref="Response"/> it is acknowledged, and
/// remembered until it is; without, it is a message only.
/// </summary>
public sealed record OperatorAlarm(string Name, string Message, Condition Condition, AlarmResponse? Response, SourceSpan Span)
{
    /// <summary>The message with what is to be done, as an operator reads it.</summary>
    public string InWords() => Response is null
        ? Message
        : $"{Message} ({Response.Priority.ToString().ToLowerInvariant()} priority: {Response.Response} within {Response.Within}; else {Response.Consequence})";
}
