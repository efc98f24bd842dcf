namespace Sequencer.Lowering.Supposing;

/// <summary>How an instrument or a device fails, from some scan on and for good.</summary>
public enum FailureMode
{
    /// <summary>A reading shows some one value, whichever; it takes in the three that follow.</summary>
    Stuck,

    /// <summary>A reading shows the low end of its range.</summary>
    StuckLow,

    /// <summary>A reading shows the high end of its range.</summary>
    StuckHigh,

    /// <summary>A reading shows what it was.</summary>
    Frozen,

    /// <summary>A switch says that it is so.</summary>
    StuckOn,

    /// <summary>A switch says that it is not so.</summary>
    StuckOff,

    /// <summary>A device is on (open, running), whatever it is told; its position switches show it.</summary>
    StaysOn,

    /// <summary>A device is off (closed, stopped), whatever it is told; its position switches show it.</summary>
    StaysOff,
}
