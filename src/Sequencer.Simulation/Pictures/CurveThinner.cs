namespace Sequencer.Simulation.Pictures;

/// <summary>
/// Keeps of all points in one pixel column the first, the lowest, the highest and the last, in the
/// order they came: the same picture from far fewer points.
/// </summary>
internal sealed class CurveThinner
{
    private readonly List<(double X, double Y)> _kept = [];
    private readonly List<(double X, double Y)> _column = [];

    public void Add(double x, double y)
    {
        if (_column.Count > 0 && Math.Floor(_column[0].X) != Math.Floor(x))
        {
            Flush();
        }

        _column.Add((x, y));
    }

    public IReadOnlyList<(double X, double Y)> Finish()
    {
        Flush();
        return _kept;
    }

    private void Flush()
    {
        int lowest = 0;
        int highest = 0;
        for (int index = 1; index < _column.Count; index++)
        {
            lowest = _column[index].Y < _column[lowest].Y ? index : lowest;
            highest = _column[index].Y > _column[highest].Y ? index : highest;
        }

        foreach (int index in new SortedSet<int> { 0, lowest, highest, _column.Count - 1 })
        {
            if (index >= 0 && index < _column.Count)
            {
                _kept.Add(_column[index]);
            }
        }

        _column.Clear();
    }
}
