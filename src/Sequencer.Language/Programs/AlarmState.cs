namespace Sequencer.Language.Programs;

/// <summary>The states of an alarm in IEC 62682 that a controller keeps; shelving is left to the station.</summary>
public enum AlarmState
{
    Normal,
    Unacknowledged,
    Acknowledged,

    /// <summary>Gone again before anybody acknowledged it.</summary>
    ReturnedUnacknowledged,
}
