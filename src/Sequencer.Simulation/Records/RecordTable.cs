namespace Sequencer.Simulation.Records;

/// <summary>Rows of numbers, each at a scan, in the order of the scans.</summary>
public sealed class RecordTable(int columns)
{
    private readonly List<long> _scans = [];
    private readonly List<double> _values = [];

    public int Columns => columns;

    public int Rows => _scans.Count;

    public long Scan(int row) => _scans[row];

    public double Value(int row, int column) => _values[(row * columns) + column];

    internal void Add(long scan, ReadOnlySpan<double> values)
    {
        if (values.Length != columns)
        {
            throw new ArgumentException($"a row of {values.Length} values in a table of {columns} columns", nameof(values));
        }

        _scans.Add(scan);
        _values.AddRange(values);
    }
}
