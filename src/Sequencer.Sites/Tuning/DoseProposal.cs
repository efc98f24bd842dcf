namespace Sequencer.Sites.Tuning;

/// <summary>One setting of a dose: what it is, what the trend asks for, and why.</summary>
/// <param name="Setting">Which setting, in words.</param>
/// <param name="Now">As it stands in the program.</param>
/// <param name="Proposed">As it should stand; the same as <paramref name="Now"/> where it fits.</param>
/// <param name="Reason">From what.</param>
internal sealed record DoseProposal(string Setting, string Now, string Proposed, string Reason)
{
    public bool IsChange => Now != Proposed;
}
