using Sequencer.Simulation.Metadata;
using Sequencer.Simulation.Records;
using Sequencer.Simulation.Words;

namespace Sequencer.Simulation.Pictures;

/// <summary>What all strips of a trend picture share: the record, the paper, the time axis, the sizes of texts.</summary>
internal sealed record TrendFrame(RunRecord Record, SiteMetadata Site, DrawingSurface Paper, EmbeddedFont Font, AxisScale Time)
{
    public const double LeftMargin = 176;
    public const double RightMargin = 92;
    public const double Edge = 16;
    public const double Label = 11;
    public const double Small = 10;
    public const double Title = 20;

    public double Left => Time.FromPixel;

    public double Right => Time.ToPixel;

    public double At(long scan) => Time.Pixel(Record.SecondsAt(scan));

    /// <summary>The times without power, as grey grounds behind a strip.</summary>
    public void Ground(double top, double height)
    {
        long? lost = null;
        foreach (RunEvent happening in Record.Events)
        {
            if (happening.Kind == RunEventKind.PowerLost)
            {
                lost ??= happening.Scan;
            }
            else if (happening.Kind == RunEventKind.PowerReturned && lost is long from)
            {
                Fill(from, happening.Scan, top, height, Palette.NoPower);
                lost = null;
            }
        }

        if (lost is long open)
        {
            Fill(open, Record.Scans, top, height, Palette.NoPower);
        }
    }

    public void Fill(long fromScan, long toScan, double top, double height, Colour colour)
    {
        double left = At(fromScan);
        double width = Math.Max(1, At(toScan) - left);
        Paper.Rectangle(left, top, Math.Min(width, Right - left + 1), height, colour);
    }

    /// <summary>The label of a row in the left margin: a tag, and under or beside it what it is.</summary>
    public void RowLabel(double baseline, string tag, string description)
    {
        string shown = Font.Fitted(tag, Label, Left - Edge - 8);
        Paper.Text(Edge, baseline, shown, Label, Palette.Ink);
        double start = Edge + Font.Width(shown, Label) + 6;
        string fitted = Font.Fitted(description, Small, Left - start - 8);
        if (fitted.Length > 0)
        {
            Paper.Text(start, baseline, fitted, Small, Palette.Faint);
        }
    }

    /// <summary>A small text with paper under it, so that lines behind do not cross it out.</summary>
    public void TextOnPaper(double x, double baseline, string words, TextAnchor anchor)
    {
        double width = Font.Width(words, Small);
        double left = anchor == TextAnchor.End ? x - width : x;
        Paper.Rectangle(left - 1, baseline - 9, width + 2, 12, Palette.Paper);
        Paper.Text(x, baseline, words, Small, Palette.Ink, anchor);
    }

    /// <summary>Vertical lines at the round times.</summary>
    public void TimeGrid(double top, double height)
    {
        foreach (double tick in Time.Ticks())
        {
            Paper.Line(Time.Pixel(tick), top, Time.Pixel(tick), top + height, Palette.Grid);
        }
    }

    public void TimeLabels(double top)
    {
        foreach (double tick in Time.Ticks())
        {
            double x = Time.Pixel(tick);
            Paper.Line(x, top, x, top + 5, Palette.Frame);
            Paper.Text(x, top + 18, ClockLabel(tick), Label, Palette.Ink, TextAnchor.Middle);
        }

        Paper.Text(Edge, top + 18, Time.TickStep < 60 ? "time, h:mm:ss" : "time, h:mm", Label, Palette.Ink);
    }

    private string ClockLabel(double seconds)
    {
        string clock = DurationWords.Clock(seconds);
        return Time.TickStep < 60 ? clock : clock[..^3];
    }
}
