namespace Sequencer.Lowering.Supposing;

/// <summary>What kind of protection can be taken out of a program.</summary>
public enum ProtectionKind
{
    Interlock,
    Exclusion,
    Permissive,
    Trip,

    /// <summary>The most that an output may give in a batch.</summary>
    BatchMaximum,

    /// <summary>The supervision of a device by its position switches.</summary>
    Confirmation,

    /// <summary>What must be so for a start to be taken.</summary>
    StartCondition,
}
