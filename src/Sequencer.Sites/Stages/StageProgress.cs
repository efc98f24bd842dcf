namespace Sequencer.Sites.Stages;

/// <summary>Where a long stage stands, in words.</summary>
public sealed record StageProgress(string Stage, string Words);
