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
            bool doses = _frame.Site.Reagents.Any(reagent => reagent.Output == output.Output);
            string description = _frame.Site.Signal(output.Output)?.Description ?? "";
            Row(y, output.Output, description, output.OnTimes, doses ? Palette.Reagent : Palette.Bar, OnTime(output));
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
            Row(y, name, words, times, Palette.Alarm, times.Count == 1 ? "once" : FormattableString.Invariant($"{times.Count} times"));
            y += RowHeight;
        }
    }

    private string OnTime(OutputTally output) => DurationWords.Of(output.OnScans * _frame.Record.ScanMilliseconds / 1000.0);

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
