using Sequencer.Language.Units;

namespace Sequencer.Language.Programs;

/// <summary>
/// What IEC 62682 asks to be known of an alarm: what happens without an answer, the operator's answer,
/// and the longest time for it.
/// </summary>
public sealed record AlarmResponse(AlarmPriority Priority, string Consequence, string Response, Duration Within);
