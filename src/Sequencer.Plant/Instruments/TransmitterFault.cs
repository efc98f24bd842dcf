namespace Sequencer.Plant.Instruments;

/// <summary>How a transmitter can deceive. Only the last two are seen by the channel itself (NE 43).</summary>
internal enum TransmitterFault
{
    /// <summary>the current stays as it is</summary>
    Frozen,

    /// <summary>4 mA</summary>
    StuckLow,

    /// <summary>20 mA</summary>
    StuckHigh,

    /// <summary>the reading wanders off steadily</summary>
    Drift,

    /// <summary>the lag is much longer</summary>
    Fouled,

    /// <summary>transmitter or input card is ranged to twice the span</summary>
    Misscaled,

    /// <summary>the failure current that its makers chose</summary>
    Failed,

    /// <summary>no current</summary>
    WireBreak,
}
