using Sequencer.Simulation.Records;

namespace Sequencer.Simulation.Pictures;

/// <summary>What the operator did and what failed, as flags on the time axis; labels stack until they find room.</summary>
internal sealed class ActionStrip
{
    private const double LaneHeight = 15;
    private const int MostLanes = 6;
    private const double Gap = 6;

    private readonly TrendFrame _frame;
    private readonly List<(double X, string Words, int Lane, TextAnchor Anchor)> _flags = [];
    private readonly int _lanes;
    private readonly int _leftOut;

    public ActionStrip(TrendFrame frame)
    {
        _frame = frame;
        List<double> freeFrom = [];
        foreach (RunEvent happening in frame.Record.Events.Where(IsShown))
        {
            double x = frame.At(happening.Scan);
            double width = frame.Font.Width(happening.Words, TrendFrame.Small) + 14;
            bool toLeft = x + width > frame.Right + TrendFrame.RightMargin - TrendFrame.Edge;
            double start = toLeft ? x - width : x;
            int lane = freeFrom.FindIndex(free => free <= start);
            if (lane < 0 && freeFrom.Count < MostLanes)
            {
                lane = freeFrom.Count;
                freeFrom.Add(0);
            }

            if (lane < 0)
            {
                _leftOut++;
                continue;
            }

            freeFrom[lane] = toLeft ? x + 3 : x + width;
            _flags.Add((x, happening.Words, lane, toLeft ? TextAnchor.End : TextAnchor.Start));
        }

        _lanes = freeFrom.Count;
    }

    public double Height => _lanes == 0 ? 0 : (_lanes * LaneHeight) + (_leftOut > 0 ? LaneHeight : 0) + Gap;

    /// <summary>The flags, each with its pole down to <paramref name="foot"/>.</summary>
    public void Draw(double top, double foot)
    {
        if (_lanes == 0)
        {
            return;
        }

        _frame.RowLabel(top + 11, "", "operator and faults");
        foreach ((double x, _, int lane, _) in _flags)
        {
            _frame.Paper.Line(x, top + (lane * LaneHeight) + 2, x, foot, Palette.Action);
        }

        foreach ((double x, string words, int lane, TextAnchor anchor) in _flags)
        {
            double y = top + (lane * LaneHeight);
            _frame.TextOnPaper(anchor == TextAnchor.Start ? x + 8 : x - 8, y + 11, words, anchor);
            _frame.Paper.Rectangle(anchor == TextAnchor.Start ? x : x - 5, y + 2, 5, 9, Palette.Action);
        }

        if (_leftOut > 0)
        {
            _frame.Paper.Text(_frame.Left, top + (_lanes * LaneHeight) + 11, FormattableString.Invariant($"{_leftOut} more in the batch report"), TrendFrame.Small, Palette.Faint);
        }
    }

    private static bool IsShown(RunEvent happening) =>
        happening.Kind is RunEventKind.Action or RunEventKind.PowerLost or RunEventKind.PowerReturned;
}
