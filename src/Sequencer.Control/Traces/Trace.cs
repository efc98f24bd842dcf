using System.Collections.Immutable;

namespace Sequencer.Control.Traces;

/// <summary>
/// A run of a system from its initial state, told by its inputs alone and run-length encoded: the way
/// to the last step of a batch is some 10^5 scans long, most of them alike.
/// </summary>
public sealed record Trace(ImmutableArray<TraceSegment> Segments)
{
    /// <summary>How many scans the run has.</summary>
    public long Scans => Segments.Sum(segment => (long)segment.Scans);

    /// <summary>The first scans of the run.</summary>
    public Trace First(long scans)
    {
        ImmutableArray<TraceSegment>.Builder first = ImmutableArray.CreateBuilder<TraceSegment>();
        foreach (TraceSegment segment in Segments.TakeWhile(_ => scans > 0))
        {
            first.Add(segment with { Scans = (int)Math.Min(segment.Scans, scans) });
            scans -= segment.Scans;
        }

        return new Trace(first.ToImmutable());
    }
}
