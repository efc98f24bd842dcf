using System.Collections.Immutable;

namespace Sequencer.Plant.Response;

/// <summary>What a plant recorded: times in seconds, growing, and a column for each thing written down.</summary>
public sealed record TrendTable(double[] Seconds, ImmutableArray<TrendColumn> Columns, ImmutableArray<TrendWords> Words)
{
    public TrendColumn? Find(string name) => Columns.FirstOrDefault(column => column.Name == name);

    public TrendWords? FindWords(string name) => Words.FirstOrDefault(column => column.Name == name);

    /// <summary>Where a column's words say so, from the first row to the first that does not any more.</summary>
    public IEnumerable<Stretch> Stretches(TrendWords column, Func<string, bool> says)
    {
        double? since = null;
        for (int row = 0; row < Seconds.Length; row++)
        {
            if (says(column.Values[row]))
            {
                since ??= Seconds[row];
            }
            else if (since is { } from)
            {
                yield return new Stretch(from, Seconds[row]);
                since = null;
            }
        }

        if (since is { } last)
        {
            yield return new Stretch(last, Seconds[^1]);
        }
    }

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
