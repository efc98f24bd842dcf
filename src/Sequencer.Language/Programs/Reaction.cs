namespace Sequencer.Language.Programs;

/// <summary>What the unit does about a fault, mildest first.</summary>
public enum Reaction
{
    Alarm,
    Hold,
    Stop,
    Abort,
    Emergency,
}
