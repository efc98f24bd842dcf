using Sequencer.Simulation.Loop;

namespace Sequencer.Simulation.Records;

/// <summary>Values of a loop that are looked at in each scan, to find out whether one of them has changed.</summary>
internal sealed class WatchedPlaces
{
    private readonly Group[] _groups;
    private readonly int[] _orderOf;
    private readonly long[] _values;

    /// <summary>Of the loop's still values, for which the groups know what may move; before the first look none.</summary>
    private long _version = -1;

    /// <param name="sources">Values of the program; none of the plant.</param>
    public WatchedPlaces(IReadOnlyList<ValueSource> sources)
    {
        _values = new long[sources.Count];
        _orderOf = new int[sources.Count];
        List<Group> groups = [];
        int first = 0;
        foreach (IGrouping<ValueOrigin, int> group in Enumerable.Range(0, sources.Count).GroupBy(index => sources[index].Origin))
        {
            Place[] places = [.. group.Select((index, order) => new Place(sources[index].Place, first + order))];
            groups.Add(new Group(group.Key, places));
            foreach (int index in group)
            {
                _orderOf[index] = first++;
            }
        }

        _groups = [.. groups];
    }

    /// <summary>A value in steps of its resolution, as it was when they were looked at last.</summary>
    public long this[int index] => _values[_orderOf[index]];

    /// <summary>Whether a value differs from when they were looked at last, in the scan before; true at the first look.</summary>
    public bool HaveChanged(ClosedLoop loop)
    {
        bool isFirst = _version < 0;
        if (loop.StillVersion != _version)
        {
            _version = loop.StillVersion;
            Array.ForEach(_groups, group => group.FindMoving(loop));
        }

        bool stillAreKept = loop.KeptStill && !isFirst;
        long differing = 0;
        foreach (Group group in _groups)
        {
            ReadOnlySpan<long> values = loop.Values(group.Origin);
            foreach (ref readonly Place place in (stillAreKept ? group.Moving : group.All).AsSpan())
            {
                long value = values[place.Source];
                ref long known = ref _values[place.Order];
                differing |= value ^ known;
                known = value;
            }
        }

        return isFirst || differing != 0;
    }

    private readonly record struct Place(int Source, int Order);

    private sealed class Group(ValueOrigin origin, Place[] all)
    {
        public ValueOrigin Origin => origin;

        public Place[] All { get; } = all;

        /// <summary>Those that the loop does not tell to be as they were.</summary>
        public Place[] Moving { get; private set; } = [];

        public void FindMoving(ClosedLoop loop) => Moving = [.. All.Where(place => !loop.IsStill(origin, place.Source))];
    }
}
