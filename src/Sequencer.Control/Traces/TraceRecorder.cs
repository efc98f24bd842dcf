using System.Collections.Immutable;

namespace Sequencer.Control.Traces;

/// <summary>Collects the inputs of scan after scan into a <see cref="Trace"/>; equal neighbours cost nothing.</summary>
public sealed class TraceRecorder
{
    private readonly ImmutableArray<TraceSegment>.Builder _segments = ImmutableArray.CreateBuilder<TraceSegment>();
    private ImmutableArray<long> _inputs = [];
    private int _scans;

    /// <summary>One scan more, with these inputs (they are copied if they differ from the last).</summary>
    public void Add(ReadOnlySpan<long> inputs)
    {
        if (_scans > 0 && _scans < int.MaxValue && inputs.SequenceEqual(_inputs.AsSpan()))
        {
            _scans++;
            return;
        }

        Close();
        _inputs = [.. inputs];
        _scans = 1;
    }

    /// <summary>All scans so far; recording may go on.</summary>
    public Trace ToTrace()
    {
        ImmutableArray<TraceSegment> closed = _segments.ToImmutable();
        return new Trace(_scans == 0 ? closed : closed.Add(new TraceSegment(_inputs, _scans)));
    }

    private void Close()
    {
        if (_scans > 0)
        {
            _segments.Add(new TraceSegment(_inputs, _scans));
        }
    }
}
