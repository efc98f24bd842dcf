using Sequencer.Control.Traces;

namespace Sequencer.Proof.Reaching;

/// <summary>A way that was played, with what was so at places on it, so that another that begins alike need not be played from the start.</summary>
internal sealed class PlayedWay(Trace way)
{
    private const int ScansBetween = 1_000;

    private readonly List<Checkpoint> _checkpoints = [];

    /// <summary>Between segments; one that comes soon after another is not kept.</summary>
    public void Pass(int segments, long scans, ReadOnlySpan<long> states, ReadOnlySpan<long> first)
    {
        if (scans - (_checkpoints.Count > 0 ? _checkpoints[^1].Scans : 0) >= ScansBetween)
        {
            _checkpoints.Add(new Checkpoint(segments, scans, states.ToArray(), first.ToArray()));
        }
    }

    /// <summary>The last checkpoint that another way passes too; null if it leaves this one before any.</summary>
    public Checkpoint? LastOn(Trace other)
    {
        int most = Math.Min(way.Segments.Length, other.Segments.Length);
        int alike = 0;
        while (alike < most && IsAlike(way.Segments[alike], other.Segments[alike]))
        {
            alike++;
        }

        return _checkpoints.FindLast(checkpoint => checkpoint.Segments <= alike);
    }

    private static bool IsAlike(TraceSegment one, TraceSegment other) =>
        one.Scans == other.Scans && one.Inputs.AsSpan().SequenceEqual(other.Inputs.AsSpan());

    /// <summary>After so many segments and scans: the states, and for each goal after how many scans it was reached first, 0 if not yet.</summary>
    public sealed record Checkpoint(int Segments, long Scans, long[] States, long[] First);
}
