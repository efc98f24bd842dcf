namespace Sequencer.Language.Programs;

public enum ResponseGoal
{
    Condition,

    /// <summary>Every output has its safe value.</summary>
    EverythingSafe,

    /// <summary>Every output has its emergency value.</summary>
    EverythingAtEmergency,
}
