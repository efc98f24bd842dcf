namespace Sequencer.Language.Programs;

/// <summary>What a trip does when its condition is unknown.</summary>
public enum BadSignal
{
    /// <summary>The trip acts, as if the condition held: the default.</summary>
    Trip,

    /// <summary>Nothing but an alarm.</summary>
    Alarm,

    /// <summary>The unit is held.</summary>
    Hold,
}
