namespace Sequencer.Sites.Tuning;

/// <summary>One setting of a dose: what it is, what the trend asks for, and why.</summary>
/// <param name="Setting">Which setting, in words.</param>
/// <param name="Now">As it stands in the program.</param>
/// <param name="Proposed">As it should stand; the same as <paramref name="Now"/> where no change is proposed.</param>
/// <param name="Judgement">What the trend says of it.</param>
/// <param name="Reason">From what.</param>
internal sealed record DoseProposal(string Setting, string Now, string Proposed, Judgement Judgement, string Reason)
{
    /// <summary>What the figure may be by the same rule, with what it rests on two standard errors up and down; null where nothing is known of that.</summary>
    public FigureRange? Range { get; init; }

    /// <summary>What the change makes weaker and what is to be reviewed before it; null where it makes nothing weaker.</summary>
    public string? Weakens { get; init; }

    public bool IsChange => Judgement == Judgement.Change;

    /// <summary>The setting stays, for a reason.</summary>
    public static DoseProposal Stays(string setting, string now, Judgement judgement, string reason) => new(setting, now, now, judgement, reason);
}
