namespace Sequencer.Simulation.Records;

/// <summary>Rows of numbers, each at a scan, in the order of the scans. Kept in blocks: a long run's rows are never copied to make room for more.</summary>
public sealed class RecordTable(int columns)
{
    private const int RowsOfBlock = 256;

    private readonly List<long> _scans = [];
    private readonly List<double[]> _blocks = [];

    public int Columns => columns;

    public int Rows => _scans.Count;

    public long Scan(int row) => _scans[row];

    public double Value(int row, int column) => _blocks[row / RowsOfBlock][(row % RowsOfBlock * columns) + column];

    internal void Add(long scan, ReadOnlySpan<double> values)
    {
        if (values.Length != columns)
        {
            throw new ArgumentException($"a row of {values.Length} values in a table of {columns} columns", nameof(values));
        }

        int place = Rows % RowsOfBlock;
        if (place == 0)
        {
            _blocks.Add(new double[RowsOfBlock * columns]);
        }

        values.CopyTo(_blocks[^1].AsSpan(place * columns));
        _scans.Add(scan);
    }
}
