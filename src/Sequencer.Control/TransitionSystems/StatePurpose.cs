namespace Sequencer.Control.TransitionSystems;

public enum StatePurpose
{
    /// <summary>Part of the controller; the exported text has a variable for it.</summary>
    Control,

    /// <summary>Watches a requirement or an assumption; influences no output.</summary>
    Monitor,
}
