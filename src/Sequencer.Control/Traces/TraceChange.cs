using System.Collections.Immutable;

namespace Sequencer.Control.Traces;

/// <summary>
/// A scan (numbered from 0) in which an output or an observed expression took a new value, with the
/// inputs of that scan; all in the order of the stepper's arrays.
/// </summary>
public sealed record TraceChange(
    long Scan,
    ImmutableArray<long> Inputs,
    ImmutableArray<long> Outputs,
    ImmutableArray<long> Observed);
