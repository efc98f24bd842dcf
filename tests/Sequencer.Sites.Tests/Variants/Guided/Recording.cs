using Sequencer.Control.Traces;

namespace Sequencer.Sites.Tests.Variants.Guided;

/// <summary>
/// The inputs of a guided run's episodes, so that the way to a scan can be told from the start of the system. Episodes share
/// what they have in common: a scan is written down as what changed in it, behind the scan before.
/// </summary>
internal sealed class Recording
{
    private readonly Dictionary<int, Link?> _slots = [];
    private long[] _last = [];
    private long[] _before = [];
    private Link? _link;
    private bool _isShared;
    private bool _isFirst;

    /// <summary>An episode begins at what a slot holds, or at the start of the system.</summary>
    public void BeginAt(int? slot)
    {
        _link = slot is int kept ? _slots[kept] : null;
        _isShared = true;
        _isFirst = true;
    }

    public void Keep(int slot)
    {
        _slots[slot] = _link;
        _isShared = true;
    }

    public void Add(long[] inputs)
    {
        _before = _last;
        _last = [.. inputs];
        if (!_isFirst && !_isShared && _last.AsSpan().SequenceEqual(_before))
        {
            _link!.Scans++;
            return;
        }

        (int, long)[] changes = [.. _last.Select((value, index) => (index, value)).Where(one => _isFirst || _before[one.index] != one.value)];
        _link = new Link(_link, changes);
        _isShared = false;
        _isFirst = false;
    }

    /// <summary>The last scan is taken back, and another added.</summary>
    public void AddInstead(long[] inputs)
    {
        if (_link!.Scans > 1)
        {
            _link.Scans--;
        }
        else
        {
            _isFirst = _link.Changes.Length == inputs.Length;
            _link = _link.Before;
            _isShared = true;
        }

        _last = _before;
        Add(inputs);
    }

    public Trace Told()
    {
        Stack<Link> way = new();
        for (Link? link = _link; link is not null; link = link.Before)
        {
            way.Push(link);
        }

        TraceRecorder trace = new();
        long[] inputs = new long[_last.Length];
        foreach (Link link in way)
        {
            foreach ((int input, long value) in link.Changes)
            {
                inputs[input] = value;
            }

            for (int scan = 0; scan < link.Scans; scan++)
            {
                trace.Add(inputs);
            }
        }

        return trace.ToTrace();
    }

    /// <summary>Scans with the same inputs, and what they changed of the scan before; of all inputs at the beginning of an episode.</summary>
    private sealed class Link(Link? before, (int Input, long Value)[] changes)
    {
        public Link? Before => before;

        public (int Input, long Value)[] Changes => changes;

        public int Scans { get; set; } = 1;
    }
}
