namespace Sequencer.Simulation.Traces;

/// <summary>What an input of a system is to a reader of its runs.</summary>
public enum TraceInputKind
{
    /// <summary>A contact of a switch.</summary>
    Contact,

    /// <summary>The value of a reading.</summary>
    Reading,

    /// <summary>The channel of a reading is bad.</summary>
    ChannelFault,

    /// <summary>A push button.</summary>
    Command,

    /// <summary>The answer to a prompt, while it is pressed.</summary>
    Answer,

    /// <summary>The operator's setting of a parameter.</summary>
    Setting,

    /// <summary>An output is in manual, or what is demanded of it there.</summary>
    Manual,

    /// <summary>Power has returned.</summary>
    Power,

    /// <summary>An instrument or a device fails, and stays so.</summary>
    Failure,

    /// <summary>Anything else: keys that stay turned, roles, what is real.</summary>
    Other,
}
