using Sequencer.Simulation.Records;

namespace Sequencer.Simulation.Pictures;

/// <summary>A unit's states as a band, and its steps as labelled boxes under it, side by side where they run in parallel.</summary>
internal sealed class UnitStrip
{
    private const double StateHeight = 16;
    private const double LaneHeight = 20;
    private const double Gap = 8;

    private readonly TrendFrame _frame;
    private readonly string _unit;
    private readonly List<(StepVisit Visit, int Lane)> _steps = [];
    private readonly int _lanes;

    public UnitStrip(TrendFrame frame, string unit)
    {
        _frame = frame;
        _unit = unit;
        List<long> freeFrom = [];
        foreach (StepVisit visit in frame.Record.Steps.Where(visit => visit.Unit == unit).OrderBy(visit => visit.FromScan))
        {
            int lane = freeFrom.FindIndex(free => free <= visit.FromScan);
            if (lane < 0)
            {
                lane = freeFrom.Count;
                freeFrom.Add(0);
            }

            freeFrom[lane] = visit.ToScan ?? long.MaxValue;
            _steps.Add((visit, lane));
        }

        _lanes = Math.Max(1, freeFrom.Count);
    }

    public double Height => StateHeight + (LaneHeight * _lanes) + Gap;

    public void Draw(double top)
    {
        _frame.RowLabel(top + 12, _unit, "state");
        foreach (StateVisit visit in _frame.Record.States.Where(visit => visit.Unit == _unit))
        {
            Box(visit.FromScan, visit.ToScan, top, StateHeight, Palette.State(visit.State), [visit.State.ToString()]);
        }

        _frame.RowLabel(top + StateHeight + 14, "", "step");
        bool other = false;
        foreach ((StepVisit visit, int lane) in _steps)
        {
            string title = _frame.Site.Step(visit.Unit, visit.Step)?.Title ?? "";
            double y = top + StateHeight + 2 + (lane * LaneHeight);
            string[] words = title.Length > 0 ? [$"{visit.Step} {title}", visit.Step] : [visit.Step];
            Box(visit.FromScan, visit.ToScan, y, LaneHeight - 3, other ? Palette.StepOther : Palette.Step, words);
            other = !other;
        }
    }

    /// <summary>The first of the words that fits is written; nothing where none does.</summary>
    private void Box(long from, long? to, double top, double height, Colour fill, IEnumerable<string> words)
    {
        double left = _frame.At(from);
        double right = _frame.At(to ?? _frame.Record.Scans);
        _frame.Paper.Rectangle(left, top, Math.Max(1, right - left), height, fill);
        _frame.Paper.Line(left, top, left, top + height, Palette.Frame);
        string? fitting = words.FirstOrDefault(word => _frame.Font.Width(word, TrendFrame.Small) <= right - left - 6);
        if (fitting is not null)
        {
            _frame.Paper.Text((left + right) / 2, top + (height / 2) + 3.6, fitting, TrendFrame.Small, Palette.Ink, TextAnchor.Middle);
        }
    }
}
