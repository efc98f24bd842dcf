using Sequencer.Simulation.Traces;

namespace Sequencer.Simulation.Pictures;

/// <summary>
/// The time axis of a timing diagram: a column from each moment of a run to the next. Columns grow with the logarithm of
/// the time they stand for, so that a second and an hour both have room; the times are written at their edges.
/// </summary>
internal sealed class TimingAxis
{
    private const double Narrowest = 92;
    private const double Growth = 16;

    private readonly List<(long From, long To, double Left, double Width)> _columns = [];

    public TimingAxis(TraceStory story, double left, double leastWidth)
    {
        Left = left;
        long[] edges = [.. story.Moments.Select(moment => moment.Scan).Prepend(1).Append(story.Scans + 1).Distinct().Order()];
        double[] widths = [.. edges.Zip(edges.Skip(1), (from, to) => Narrowest + (Growth * Math.Log10(to - from)))];
        double scale = Math.Max(1, leastWidth / widths.Sum());
        double place = left;
        for (int index = 0; index < widths.Length; index++)
        {
            double width = Math.Floor(widths[index] * scale);
            _columns.Add((edges[index], edges[index + 1], place, width));
            place += width;
        }

        Right = place;
    }

    public double Left { get; }

    public double Right { get; }

    public IReadOnlyList<(long From, long To, double Left, double Width)> Columns => _columns;

    public double At(long scan)
    {
        foreach ((long from, long to, double left, double width) in _columns)
        {
            if (scan < to)
            {
                return left + (width * Math.Max(0, scan - from) / (to - from));
            }
        }

        return Right;
    }
}
