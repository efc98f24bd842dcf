namespace Sequencer.Export.Wiring;

/// <summary>What stands at an address of the controller.</summary>
public enum PointKind
{
    /// <summary>A loop current in microamperes that becomes a reading.</summary>
    Reading,

    /// <summary>A contact, as it is.</summary>
    Contact,

    /// <summary>The coil of a device.</summary>
    Coil,

    /// <summary>A set value that becomes a loop current in microamperes.</summary>
    Setting,
}
