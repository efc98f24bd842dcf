using Sequencer.Simulation.Loop;

namespace Sequencer.Simulation.Records;

/// <summary>Values of a loop that are looked at in each scan, to find out whether one of them has changed.</summary>
internal sealed class WatchedPlaces
{
    private readonly (ValueOrigin Origin, int[] Places, int[] Slots)[] _groups;
    private readonly long[] _values;

    /// <param name="sources">Values of the program; none of the plant.</param>
    public WatchedPlaces(IReadOnlyCollection<ValueSource> sources)
    {
        _values = new long[sources.Count];
        _groups =
        [
            .. sources.Select((source, slot) => (source, slot)).GroupBy(pair => pair.source.Origin)
                .Select(group => (group.Key, group.Select(pair => pair.source.Place).ToArray(), group.Select(pair => pair.slot).ToArray())),
        ];
    }

    /// <summary>Each value in steps of its resolution, as it was when they were looked at last.</summary>
    public ReadOnlySpan<long> Values => _values;

    /// <summary>Whether a value differs from when they were looked at last.</summary>
    public bool HaveChanged(ClosedLoop loop)
    {
        bool changed = false;
        foreach ((ValueOrigin origin, int[] places, int[] slots) in _groups)
        {
            ReadOnlySpan<long> values = loop.Values(origin);
            for (int index = 0; index < places.Length; index++)
            {
                long value = values[places[index]];
                changed |= value != _values[slots[index]];
                _values[slots[index]] = value;
            }
        }

        return changed;
    }
}
