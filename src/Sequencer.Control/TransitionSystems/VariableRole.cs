namespace Sequencer.Control.TransitionSystems;

public enum VariableRole
{
    /// <summary>Free in every scan: signals, commands, settings, manual demands, loss of power.</summary>
    Input,

    /// <summary>Carried from scan to scan.</summary>
    State,
}
