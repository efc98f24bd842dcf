namespace Sequencer.Simulation.Traces;

/// <summary>
/// A value from scan to scan, kept as runs in which it stays or, where it counts, changes by the same amount. Scans are
/// numbered from 1 and given in order.
/// </summary>
/// <param name="counts">Whether a change may be that of a clock; else each new value is a run of its own.</param>
internal sealed class ValueRuns(bool counts)
{
    private readonly List<ValueRun> _runs = [];

    public IReadOnlyList<ValueRun> Runs => _runs;

    public void Add(long scan, long value)
    {
        if (_runs.Count == 0)
        {
            _runs.Add(new ValueRun(scan, value, 0));
            return;
        }

        ValueRun last = _runs[^1];
        if (last.At(scan) == value)
        {
            return;
        }

        if (counts && last.From == scan - 1)
        {
            _runs[^1] = last with { Change = value - last.Value };
            return;
        }

        _runs.Add(new ValueRun(scan, value, 0));
    }

    public ValueRun RunAt(long scan)
    {
        int low = 0;
        int high = _runs.Count - 1;
        while (low < high)
        {
            int middle = (low + high + 1) / 2;
            (low, high) = _runs[middle].From <= scan ? (middle, high) : (low, middle - 1);
        }

        return _runs[low];
    }

    public long At(long scan) => RunAt(scan).At(scan);
}
