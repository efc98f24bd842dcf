namespace Sequencer.Control.TransitionSystems;

public enum StatePurpose
{
    /// <summary>Part of the controller; the exported text has a variable for it.</summary>
    Control,

    /// <summary>Watches a requirement or an assumption; influences no output.</summary>
    Monitor,

    /// <summary>
    /// Kept to find out whether something else than the program has changed memory: a copy of another state, or that such a change was
    /// found. The exported text has a variable for it; while memory keeps what is written it says nothing new.
    /// </summary>
    Watch,
}
