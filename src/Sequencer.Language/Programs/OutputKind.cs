namespace Sequencer.Language.Programs;

public enum OutputKind
{
    /// <summary>Open or closed.</summary>
    Valve,

    /// <summary>Running or stopped.</summary>
    Motor,
}
