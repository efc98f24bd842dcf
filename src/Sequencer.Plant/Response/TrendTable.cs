using System.Collections.Immutable;

namespace Sequencer.Plant.Response;

/// <summary>What a plant recorded: times in seconds, growing, and a column for each thing written down.</summary>
public sealed record TrendTable(double[] Seconds, ImmutableArray<TrendColumn> Columns)
{
    public TrendColumn? Find(string name) => Columns.FirstOrDefault(column => column.Name == name);

    /// <summary>When a column of ones and noughts was on, in order; one that is on at the end is left out.</summary>
    public IEnumerable<Pulse> Pulses(TrendColumn column)
    {
        double? since = null;
        for (int row = 0; row < Seconds.Length; row++)
        {
            bool on = column.Values[row] > 0.5;
            if (on)
            {
                since ??= Seconds[row];
            }
            else if (since is { } start)
            {
                yield return new Pulse(start, Seconds[row] - start);
                since = null;
            }
        }
    }
}
