namespace Sequencer.Plant.Tests.OutsideChecks;

/// <summary>Where the value comes from that a check expects.</summary>
internal enum Basis
{
    /// <summary>printed in a source that the test names</summary>
    Published,

    /// <summary>worked out apart from this program, from published constants, data or formulas that the test names</summary>
    Computed,

    /// <summary>printed somewhere, but remembered only</summary>
    Memory,
}
