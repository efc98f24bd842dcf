namespace Sequencer.Language.Programs;

public enum InterlockForm
{
    /// <summary>Blocked while the condition possibly holds.</summary>
    While,

    /// <summary>Blocked unless the condition surely holds.</summary>
    Unless,

    /// <summary>Blocked from the first condition (possibly) until the release (surely), and perhaps a reset.</summary>
    FromUntil,
}
