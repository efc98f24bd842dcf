namespace Sequencer.Sites.Tests.Pascal;

/// <summary>A state some scans before a transition, and the inputs from there up to the scan in which it was taken.</summary>
/// <param name="Place">Where the Pascal program keeps the state.</param>
internal sealed record Approach(int Place, long[] States, long[][] Inputs);
