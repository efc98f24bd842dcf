namespace Sequencer.Sites.Trials;

/// <summary>How <c>trials</c> goes about it.</summary>
public sealed record TrialSettings
{
    /// <summary>How many runs; with <see cref="TrialFaults.Each"/>, of each fault. Null for as many as are usual.</summary>
    public int? Runs { get; init; }

    public ulong Seed { get; init; } = 1;

    public TrialFaults Faults { get; init; }

    /// <summary>Only this part of so many, as 2 of 8; null for the whole set.</summary>
    public (int Part, int Of)? Shard { get; init; }

    /// <summary>Plays nothing: what parts have left is put together, and refused where a run is missing.</summary>
    public bool MergeOnly { get; init; }

    /// <summary>Runs at a time; results do not depend on it.</summary>
    public int Threads { get; init; } = 2;
}
