namespace Sequencer.Proof.Slicing;

/// <summary>Which assumptions a slice takes along.</summary>
internal enum AssumptionScope
{
    None,

    /// <summary>Those that share a variable with the requirement's cone, and so on.</summary>
    Related,

    All,
}
