using Sequencer.Control.Traces;
using Sequencer.Proof.Runs;

namespace Sequencer.Proof.Reaching;

/// <summary>A state that a run has come to, and how: from the place before, by inputs held for some scans. Two places are never the same, even with one state.</summary>
internal sealed class Place(long[] states, Place? from, TraceSegment by, long scans)
{
    public long[] States => states;

    /// <summary>Null for the initial state.</summary>
    public Place? From => from;

    public TraceSegment By => by;

    /// <summary>Scans from the initial state.</summary>
    public long Scans => scans;

    /// <summary>The run from the initial state.</summary>
    public IReadOnlyList<TraceSegment> Way()
    {
        Stack<TraceSegment> backwards = new();
        for (Place? at = this; at?.From is not null; at = at.From)
        {
            backwards.Push(at.By);
        }

        List<TraceSegment> way = [];
        foreach (TraceSegment segment in backwards)
        {
            SearchRun.Append(way, segment.Inputs, segment.Scans);
        }

        return way;
    }
}
