namespace Sequencer.Sites.Tuning;

/// <summary>What a trend says of a setting.</summary>
internal enum Judgement
{
    /// <summary>It can stay.</summary>
    Fits,

    /// <summary>Another figure is proposed.</summary>
    Change,

    /// <summary>The trend does not say what it should be, or no figure would do.</summary>
    Undecided,
}
