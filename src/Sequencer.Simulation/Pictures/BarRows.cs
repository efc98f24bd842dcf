using Sequencer.Simulation.Metadata;
using Sequencer.Simulation.Records;
using Sequencer.Simulation.Words;

namespace Sequencer.Simulation.Pictures;

/// <summary>On-times as bars, one row each: outputs, then alarms; what was never on is named in one line.</summary>
internal sealed class BarRows
{
    public const double RowHeight = 16;
    private const double BarHeight = 10;
    private const double SectionGap = 6;

    private readonly TrendFrame _frame;
    private readonly List<OutputTally> _outputs;
    private readonly List<(string Name, string Words, List<ScanInterval> Times)> _alarms;
    private readonly string _neverOn;

    public BarRows(TrendFrame frame)
    {
        _frame = frame;
        _outputs = [.. frame.Record.Outputs.Where(output => output.OnScans > 0)];
        _neverOn = string.Join(", ", frame.Record.Outputs.Where(output => output.OnScans == 0).Select(output => output.Output));
        _alarms = [.. AlarmTimes.Of(frame.Record).Select(alarm => (alarm.Name, alarm.Words, alarm.Times.ToList()))];
    }

    public double Height => (RowHeight * (_outputs.Count + _alarms.Count)) + (_neverOn.Length > 0 ? RowHeight : 0) + (_alarms.Count > 0 ? SectionGap : 0);

    public void Draw(double top)
    {
        double y = top;
        _frame.Ground(top, Height);
        _frame.TimeGrid(top, Height);
        foreach (OutputTally output in _outputs)
        {
            ReagentMetadata? reagent = _frame.Site.Reagents.FirstOrDefault(reagent => reagent.Output == output.Output);
            string description = _frame.Site.Signal(output.Output)?.Description ?? "";
            Row(y, output.Output, description, output.OnTimes, reagent is null ? Palette.Bar : Palette.Reagent, Sum(output, reagent));
            y += RowHeight;
        }

        if (_neverOn.Length > 0)
        {
            string words = _frame.Font.Fitted($"never energised: {_neverOn}", TrendFrame.Small, _frame.Right - _frame.Left);
            _frame.Paper.Text(_frame.Left, y + 11, words, TrendFrame.Small, Palette.Faint);
            y += RowHeight;
        }

        y += SectionGap;
        foreach ((string name, string words, List<ScanInterval> times) in _alarms)
        {
            Row(y, name, "alarm", times, Palette.Alarm, times.Count == 1 ? "once" : FormattableString.Invariant($"{times.Count} times"));
            Message(y, words, times);
            y += RowHeight;
        }
    }

    private string Sum(OutputTally output, ReagentMetadata? reagent)
    {
        double seconds = _frame.Record.SecondsAt(output.OnScans);
        if (reagent is null)
        {
            return DurationWords.Clock(seconds);
        }

        double litres = seconds / 60 * reagent.LitresPerMinute;
        string volume = litres < 1000 ? FormattableString.Invariant($"{litres:0.00} L") : FormattableString.Invariant($"{litres / 1000:0.00} m3");
        return FormattableString.Invariant($"{volume} in {output.Pulses}");
    }

    /// <summary>An alarm's words in the widest gap of its row.</summary>
    private void Message(double top, string words, List<ScanInterval> times)
    {
        double gapLeft = _frame.Left;
        double widest = _frame.At(times[0].From) - _frame.Left;
        for (int index = 0; index < times.Count; index++)
        {
            double left = _frame.At(times[index].To);
            double right = index + 1 < times.Count ? _frame.At(times[index + 1].From) : _frame.Right;
            (gapLeft, widest) = right - left >= widest ? (left, right - left) : (gapLeft, widest);
        }

        string fitted = _frame.Font.Fitted(words, TrendFrame.Small, widest - 12);
        if (fitted.Length > 0)
        {
            _frame.TextOnPaper(gapLeft + 6, top + 12, fitted, TextAnchor.Start);
        }
    }

    private void Row(double top, string tag, string description, IEnumerable<ScanInterval> times, Colour colour, string sum)
    {
        _frame.Paper.Line(_frame.Left, top + RowHeight, _frame.Right, top + RowHeight, Palette.Grid);
        _frame.RowLabel(top + 12, tag, description);
        foreach (ScanInterval time in times)
        {
            _frame.Fill(time.From, time.To, top + 3, BarHeight, colour);
        }

        _frame.Paper.Text(_frame.Right + 9, top + 12, _frame.Font.Fitted(sum, TrendFrame.Small, TrendFrame.RightMargin - 14), TrendFrame.Small, Palette.Ink);
    }
}
