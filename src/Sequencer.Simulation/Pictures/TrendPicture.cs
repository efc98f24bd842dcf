using Sequencer.Simulation.Metadata;
using Sequencer.Simulation.Records;
using Sequencer.Simulation.Words;

namespace Sequencer.Simulation.Pictures;

/// <summary>
/// A run on one sheet over one time axis: what was done, the units' states and steps, the
/// measurements with their setpoints and limits, on-times of outputs, alarms.
/// </summary>
public static class TrendPicture
{
    public const int Width = 1600;
    public const int Height = 1000;

    private const double Head = 58;
    private const double Foot = 46;
    private const double PanelGap = 8;
    private const double LowestPanel = 64;
    private const double HighestPanel = 400;
    private const int MostTimeTicks = 16;
    private const int HashShown = 16;

    /// <summary>
    /// The picture's height for a record: <see cref="Height"/>, or more where its rows need it.
    /// </summary>
    public static int HeightFor(RunRecord record, SiteMetadata site, EmbeddedFont font)
    {
        Probe paper = new();
        TrendFrame frame = Frame(record, site, paper, font);
        int panels = Panels(record).Length;
        double needed = Head + new ActionStrip(frame).Height + Units(frame).Sum(unit => unit.Height)
            + (panels * (LowestPanel + PanelGap)) + new BarRows(frame).Height + PanelGap + Foot;
        return Math.Max(Height, (int)Math.Ceiling(needed));
    }

    public static string Svg(RunRecord record, SiteMetadata site, EmbeddedFont font)
    {
        SvgSurface paper = new(Width, HeightFor(record, site, font), font);
        Draw(record, site, paper, font);
        return paper.ToString();
    }

    public static byte[] Png(RunRecord record, SiteMetadata site, EmbeddedFont font)
    {
        using PngSurface paper = new(Width, HeightFor(record, site, font), font);
        Draw(record, site, paper, font);
        return paper.ToBytes();
    }

    internal static void Draw(RunRecord record, SiteMetadata site, DrawingSurface paper, EmbeddedFont font)
    {
        TrendFrame frame = Frame(record, site, paper, font);
        ActionStrip actions = new(frame);
        BarRows bars = new(frame);
        Titles(frame);
        double top = Head;
        double barTop = paper.Height - Foot - bars.Height;
        double units = top + actions.Height;
        foreach (UnitStrip unit in Units(frame))
        {
            unit.Draw(units);
            units += unit.Height;
        }

        actions.Draw(top, top + actions.Height);
        int[] panels = Panels(record);
        double height = Math.Min(HighestPanel, ((barTop - PanelGap - units) / Math.Max(1, panels.Length)) - PanelGap);
        foreach (int column in panels)
        {
            new CurvePanel(frame, column).Draw(units, height);
            units += height + PanelGap;
        }

        bars.Draw(barTop);
        frame.TimeLabels(paper.Height - Foot + 4);
        paper.Text(paper.Width - TrendFrame.Edge, paper.Height - 8, "simulated: no proof about the real plant", TrendFrame.Small, Palette.Faint, TextAnchor.End);
    }

    private static TrendFrame Frame(RunRecord record, SiteMetadata site, DrawingSurface paper, EmbeddedFont font) => new(
        record,
        site,
        paper,
        font,
        AxisScale.Time(record.Seconds, TrendFrame.LeftMargin, Width - TrendFrame.RightMargin, MostTimeTicks));

    private static UnitStrip[] Units(TrendFrame frame) =>
        [.. frame.Record.States.Select(visit => visit.Unit).Distinct(StringComparer.Ordinal).Select(unit => new UnitStrip(frame, unit))];

    private static int[] Panels(RunRecord record) =>
        [.. Enumerable.Range(0, record.Columns.Length).Where(column => record.Columns[column].Kind == ColumnKind.Signal)];

    private static void Titles(TrendFrame frame)
    {
        frame.Paper.Text(TrendFrame.Edge, 28, $"{frame.Site.Name}: {frame.Record.Name}", TrendFrame.Title, Palette.Ink);
        string facts = FormattableString.Invariant($"{DurationWords.Of(frame.Record.Seconds)}, scan {frame.Record.ScanMilliseconds} ms, program {Short(frame.Site.MeaningHash)}");
        if (frame.Record.Failure is { } failure)
        {
            facts = $"NOT VALID: the plant model stopped: {failure}";
        }

        frame.Paper.Text(TrendFrame.Edge, 46, frame.Font.Fitted(facts, TrendFrame.Label, frame.Paper.Width - (2 * TrendFrame.Edge)), TrendFrame.Label, Palette.Faint);
    }

    /// <summary>Enough of the hash to tell two programs apart by eye; the report has all of it.</summary>
    private static string Short(string hash) => hash.Length <= HashShown ? hash : hash[..HashShown] + "…";

    /// <summary>Paper that takes no ink, to measure on.</summary>
    private sealed class Probe() : DrawingSurface(TrendPicture.Width, TrendPicture.Height)
    {
        public override void Rectangle(double x, double y, double width, double height, Colour fill)
        {
        }

        public override void Line(double fromX, double fromY, double toX, double toY, Colour colour, double thickness = 1, bool dashed = false)
        {
        }

        public override void Polyline(IReadOnlyList<(double X, double Y)> points, Colour colour, double thickness)
        {
        }

        public override void Text(double x, double y, string words, double size, Colour colour, TextAnchor anchor = TextAnchor.Start)
        {
        }
    }
}
