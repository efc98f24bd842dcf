namespace Sequencer.Control.TransitionSystems;

public enum RequirementKind
{
    /// <summary>A fact of each scan.</summary>
    Never,

    /// <summary>Something must follow within a stated number of scans.</summary>
    Response,
}
