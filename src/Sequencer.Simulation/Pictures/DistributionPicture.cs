using System.Globalization;
using Sequencer.Simulation.Words;

namespace Sequencer.Simulation.Pictures;

/// <summary>Histograms of what came of all runs of a set, one panel an outcome, with the median, the middle nine tenths and the consent's bounds.</summary>
public static class DistributionPicture
{
    private const int Columns = 2;
    private const double PanelWidth = 560;
    private const double PanelHeight = 250;
    private const double Head = 62;
    private const double Foot = 30;
    private const double Inset = 52;
    private const double Above = 50;
    private const double Below = 36;
    private const int MostBars = 40;
    private const int MostTicks = 6;
    private const int Figures = 4;

    public static string Svg(string title, string subtitle, IReadOnlyList<DistributionPanel> panels, EmbeddedFont font)
    {
        SvgSurface paper = new(Columns * PanelWidth, Tall(panels), font);
        Draw(title, subtitle, panels, paper, font);
        return paper.ToString();
    }

    public static byte[] Png(string title, string subtitle, IReadOnlyList<DistributionPanel> panels, EmbeddedFont font)
    {
        using PngSurface paper = new((int)(Columns * PanelWidth), (int)Tall(panels), font);
        Draw(title, subtitle, panels, paper, font);
        return paper.ToBytes();
    }

    private static double Tall(IReadOnlyList<DistributionPanel> panels) => Head + ((panels.Count + Columns - 1) / Columns * PanelHeight) + Foot;

    private static void Draw(string title, string subtitle, IReadOnlyList<DistributionPanel> panels, DrawingSurface paper, EmbeddedFont font)
    {
        paper.Text(Inset, 30, font.Fitted(title, TrendFrame.Title, paper.Width - (2 * Inset)), TrendFrame.Title, Palette.Ink);
        paper.Text(Inset, 50, font.Fitted(subtitle, TrendFrame.Label, paper.Width - (2 * Inset)), TrendFrame.Label, Palette.Faint);
        for (int index = 0; index < panels.Count; index++)
        {
            Panel(panels[index], index % Columns * PanelWidth, Head + (index / Columns * PanelHeight), paper, font);
        }

        paper.Text(
            Inset,
            paper.Height - 10,
            "bars: runs; dark line: median; dashed: 5 % of runs below, 5 % above; red: a bound of the consent. Runs of a model, no proof about the plant.",
            TrendFrame.Small,
            Palette.Faint);
    }

    private static void Panel(DistributionPanel panel, double x, double y, DrawingSurface paper, EmbeddedFont font)
    {
        double left = x + Inset;
        double right = x + PanelWidth - 20;
        double top = y + Above;
        double bottom = y + PanelHeight - Below;
        (int[] counts, double from, double width) = Bars(panel.Spread.Ordered);
        double margin = (panel.Spread.Highest - panel.Spread.Lowest) * 0.04;
        double lowest = Math.Min(panel.Spread.Lowest - margin, Near(panel.Low, panel) ?? double.PositiveInfinity);
        double highest = Math.Max(panel.Spread.Highest + margin, Near(panel.High, panel) ?? double.NegativeInfinity);
        AxisScale across = AxisScale.Value(lowest, highest, left, right, MostTicks, 1e-9);
        AxisScale up = AxisScale.Value(0, counts.Max(), bottom, top, 4, 0.25);
        string unit = panel.Unit.Length == 0 ? "" : $" [{panel.Unit}]";
        paper.Text(left, y + 18, font.Fitted(panel.Title + unit, TrendFrame.Label, right - left), TrendFrame.Label, Palette.Ink);
        paper.Text(left, y + 36, font.Fitted(Told(panel), TrendFrame.Small, right - left), TrendFrame.Small, Palette.Faint);
        foreach (double tick in up.Ticks().Where(tick => tick == Math.Round(tick)))
        {
            paper.Line(left, up.Pixel(tick), right, up.Pixel(tick), Palette.Grid);
            paper.Text(left - 6, up.Pixel(tick) + 4, tick.ToString("0", CultureInfo.InvariantCulture), TrendFrame.Small, Palette.Ink, TextAnchor.End);
        }

        for (int bar = 0; bar < counts.Length; bar++)
        {
            double begin = across.Pixel(from + (bar * width));
            paper.Rectangle(begin, up.Pixel(counts[bar]), Math.Max(1, across.Pixel(from + ((bar + 1) * width)) - begin - 1), bottom - up.Pixel(counts[bar]), Palette.Bar);
        }

        foreach (double tick in across.Ticks())
        {
            paper.Line(across.Pixel(tick), bottom, across.Pixel(tick), bottom + 4, Palette.Frame);
            paper.Text(across.Pixel(tick), bottom + 17, ValueWords.Significant(tick, Figures, ""), TrendFrame.Small, Palette.Ink, TextAnchor.Middle);
        }

        Upright(panel.Spread.At(0.05), Palette.Curve, true);
        Upright(panel.Spread.Median, Palette.Curve, false);
        Upright(panel.Spread.At(0.95), Palette.Curve, true);
        Upright(panel.Low, Palette.Alarm, false);
        Upright(panel.High, Palette.Alarm, false);
        paper.Outline(left, top, right - left, bottom - top, Palette.Frame);

        void Upright(double? value, Colour colour, bool dashed)
        {
            if (value >= across.From && value <= across.To)
            {
                paper.Line(across.Pixel(value.Value), top, across.Pixel(value.Value), bottom, colour, 1.4, dashed);
            }
        }
    }

    private static string Told(DistributionPanel panel)
    {
        string without = panel.Spread.Without == 0 ? "" : string.Create(CultureInfo.InvariantCulture, $"; not in {panel.Spread.Without} runs");
        return $"{Shown(panel.Spread.Lowest)} to {Shown(panel.Spread.Highest)}, median {Shown(panel.Spread.Median)}, nine tenths {Shown(panel.Spread.At(0.05))} to {Shown(panel.Spread.At(0.95))}{without}";

        string Shown(double value) => ValueWords.Significant(value, Figures, "");
    }

    /// <summary>A bound that lies so far off that the bars would shrink to a stroke is left outside.</summary>
    private static double? Near(double? bound, DistributionPanel panel)
    {
        double span = Math.Max(panel.Spread.Highest - panel.Spread.Lowest, 1e-9);
        return bound >= panel.Spread.Lowest - span && bound <= panel.Spread.Highest + span ? bound : null;
    }

    /// <summary>As many bars as the root of the number of values: enough to see a shape, few enough that each has some.</summary>
    private static (int[] Counts, double From, double Width) Bars(IReadOnlyList<double> ordered)
    {
        int bars = Math.Clamp((int)Math.Ceiling(Math.Sqrt(ordered.Count)), 1, MostBars);
        double from = ordered[0];
        double width = (ordered[^1] - from) / bars;
        int[] counts = new int[bars];
        foreach (double value in ordered)
        {
            counts[width > 0 ? Math.Min(bars - 1, (int)((value - from) / width)) : 0]++;
        }

        return (counts, from, width);
    }
}
