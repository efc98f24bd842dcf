using Sequencer.Control.TransitionSystems;

namespace Sequencer.StructuredText.Lowering;

/// <summary>
/// A point of the scan: whose names are in force, what every slot holds, what is known of it, and whether it is
/// reached in every scan.
/// </summary>
internal sealed record ScanPoint(BlockInstance Frame, Store Store, RangeFacts Facts, bool IsConditional, int Depth)
{
    /// <summary>Where EXIT, CONTINUE and RETURN note that they were done.</summary>
    public Jumps Jumps { get; init; } = Jumps.None;

    public ScanPoint Under(Expression condition) => this with
    {
        Store = Store.Branch(),
        Facts = Facts.Assume(condition),
        IsConditional = IsConditional || !condition.IsTrue,
    };
}
