namespace Sequencer.Text;

public enum Severity
{
    /// <summary>Worth knowing; nothing is wrong.</summary>
    Information,

    /// <summary>Allowed, but often a mistake; does not change the exit code.</summary>
    Warning,

    /// <summary>The program has no meaning, or a dangerous one, until this is mended.</summary>
    Error,
}
