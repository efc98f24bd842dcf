namespace Sequencer.Sites.Trials;

/// <summary>Which faults the runs of a set have.</summary>
public enum TrialFaults
{
    /// <summary>None: what is uncertain, and nothing broken.</summary>
    None,

    /// <summary>Every fault of every piece, each alone.</summary>
    Each,

    /// <summary>Two faults in a run.</summary>
    Pairs,
}
