namespace Sequencer.Control.TransitionSystems;

public enum Sort
{
    Boolean,
    Integer,
}
