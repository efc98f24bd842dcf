namespace Sequencer.Control.Execution.Specialising;

/// <summary>The values of the leaves that do not move, and the scans specialised for them.</summary>
internal sealed class ScanSituation(long[] leaves)
{
    private const int MostScans = 8;

    private readonly List<SpecialisedScan> _scans = [];

    /// <summary>All inputs, then all states; those that move are not looked at.</summary>
    public long[] Leaves { get; } = leaves;

    /// <summary>Scans in it that were done whole since the last that was specialised.</summary>
    public int WholeScans { get; set; }

    public int Count => _scans.Count;

    public SpecialisedScan this[int index] => _scans[index];

    public void Add(SpecialisedScan scan)
    {
        if (_scans.Count == MostScans)
        {
            _scans.RemoveAt(_scans.Count - 1);
        }

        _scans.Insert(0, scan);
        WholeScans = 0;
    }

    /// <summary>Forgets the scans: they count on what is not so.</summary>
    public void Clear() => _scans.Clear();

    /// <summary>What was right last is tried earlier.</summary>
    public void Prefer(int index)
    {
        if (index > 0)
        {
            (_scans[index], _scans[index - 1]) = (_scans[index - 1], _scans[index]);
        }
    }
}
