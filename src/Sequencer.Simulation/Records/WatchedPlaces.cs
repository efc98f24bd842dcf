using Sequencer.Simulation.Loop;

namespace Sequencer.Simulation.Records;

/// <summary>Values of a loop that are looked at in each scan, to find out whether one of them has changed.</summary>
internal sealed class WatchedPlaces
{
    private readonly (ValueOrigin Origin, int[] Places, int First)[] _groups;
    private readonly int[] _orderOf;
    private readonly long[] _values;

    /// <param name="sources">Values of the program; none of the plant.</param>
    public WatchedPlaces(IReadOnlyList<ValueSource> sources)
    {
        _values = new long[sources.Count];
        _orderOf = new int[sources.Count];
        List<(ValueOrigin, int[], int)> groups = [];
        int first = 0;
        foreach (IGrouping<ValueOrigin, int> group in Enumerable.Range(0, sources.Count).GroupBy(index => sources[index].Origin))
        {
            groups.Add((group.Key, [.. group.Select(index => sources[index].Place)], first));
            foreach (int index in group)
            {
                _orderOf[index] = first++;
            }
        }

        _groups = [.. groups];
    }

    /// <summary>A value in steps of its resolution, as it was when they were looked at last.</summary>
    public long this[int index] => _values[_orderOf[index]];

    /// <summary>Whether a value differs from when they were looked at last.</summary>
    public bool HaveChanged(ClosedLoop loop)
    {
        long differing = 0;
        foreach ((ValueOrigin origin, int[] places, int first) in _groups)
        {
            ReadOnlySpan<long> values = loop.Values(origin);
            Span<long> known = _values.AsSpan(first, places.Length);
            for (int index = 0; index < places.Length; index++)
            {
                long value = values[places[index]];
                differing |= value ^ known[index];
                known[index] = value;
            }
        }

        return differing != 0;
    }
}
