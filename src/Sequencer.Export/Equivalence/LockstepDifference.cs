using Sequencer.Control.Traces;

namespace Sequencer.Export.Equivalence;

/// <summary>
/// The first scan (from 1) in which a pair of variables differs, with both names and values, and the inputs of
/// the reference up to and with that scan.
/// </summary>
public sealed record LockstepDifference(long Scan, string Reference, string Other, long ReferenceValue, long OtherValue, Trace Inputs)
{
    public override string ToString() =>
        FormattableString.Invariant($"scan {Scan}: {Reference} is {ReferenceValue}, {Other} is {OtherValue}");
}
