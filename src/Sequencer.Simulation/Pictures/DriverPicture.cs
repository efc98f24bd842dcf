using System.Globalization;

namespace Sequencer.Simulation.Pictures;

/// <summary>What drives each outcome of a set: bars from falls-with-it on the left to rises-with-it on the right.</summary>
public static class DriverPicture
{
    private const int Width = 1120;
    private const double Left = 52;
    private const double Names = 430;
    private const double Right = 1060;
    private const double Head = 70;
    private const double Foot = 34;
    private const double RowHeight = 22;
    private const double GroupGap = 34;

    public static string Svg(string title, IReadOnlyList<DriverBar> bars, EmbeddedFont font)
    {
        SvgSurface paper = new(Width, Tall(bars), font);
        Draw(title, bars, paper, font);
        return paper.ToString();
    }

    public static byte[] Png(string title, IReadOnlyList<DriverBar> bars, EmbeddedFont font)
    {
        using PngSurface paper = new(Width, (int)Tall(bars), font);
        Draw(title, bars, paper, font);
        return paper.ToBytes();
    }

    private static double Tall(IReadOnlyList<DriverBar> bars) =>
        Head + (bars.Count * RowHeight) + (bars.Select(bar => bar.Outcome).Distinct().Count() * GroupGap) + Foot;

    private static void Draw(string title, IReadOnlyList<DriverBar> bars, DrawingSurface paper, EmbeddedFont font)
    {
        AxisScale across = new(-1, 1, Names + 20, Right, 0.5);
        paper.Text(Left, 30, font.Fitted(title, TrendFrame.Title, Right - Left), TrendFrame.Title, Palette.Ink);
        paper.Text(Left, 50, "rank correlation of each outcome with what was drawn; what chance could give is left out", TrendFrame.Label, Palette.Faint);
        double bottom = paper.Height - Foot;
        foreach (double tick in across.Ticks())
        {
            paper.Line(across.Pixel(tick), Head, across.Pixel(tick), bottom, tick == 0 ? Palette.Frame : Palette.Grid);
            paper.Text(across.Pixel(tick), bottom + 16, tick.ToString("+0.0;-0.0;0", CultureInfo.InvariantCulture), TrendFrame.Small, Palette.Ink, TextAnchor.Middle);
        }

        double y = Head;
        foreach (IGrouping<string, DriverBar> outcome in bars.GroupBy(bar => bar.Outcome))
        {
            paper.Text(Left, y + 22, font.Fitted(outcome.Key, TrendFrame.Label, Names - Left), TrendFrame.Label, Palette.Ink);
            y += GroupGap;
            foreach (DriverBar bar in outcome)
            {
                double end = across.Pixel(bar.Correlation);
                double zero = across.Pixel(0);
                paper.Text(Names, y + 12, font.Fitted(bar.Quantity, TrendFrame.Small, Names - Left), TrendFrame.Small, Palette.Ink, TextAnchor.End);
                paper.Rectangle(Math.Min(zero, end), y + 1, Math.Abs(end - zero), RowHeight - 8, bar.Correlation > 0 ? Palette.Bar : Palette.Reagent);
                bool isRight = bar.Correlation > 0;
                paper.Text(
                    isRight ? zero - 6 : zero + 6, y + 12, bar.Correlation.ToString("+0.00;-0.00", CultureInfo.InvariantCulture), TrendFrame.Small, Palette.Ink, isRight ? TextAnchor.End : TextAnchor.Start);
                y += RowHeight;
            }
        }

        paper.Text(Left, bottom + 16, "left: falls with it; right: rises with it", TrendFrame.Small, Palette.Faint);
    }
}
