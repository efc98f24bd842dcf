using Sequencer.Plant.Ledger;
using Sequencer.Simulation.Records;

namespace Sequencer.Simulation.Pictures;

/// <summary>What went where in a run: boxes for places, bands as wide as the litres that passed, with the dry solids in them.</summary>
public static class FlowPicture
{
    private const double Left = 32;
    private const double Head = 84;
    private const double Foot = 40;
    private const double Box = 150;
    private const double Between = 220;
    private const double Padding = 6;
    private const double LineOfBox = 13;
    private const double RoomOfReturn = 22;
    private const double StepAside = 9;
    private const int PartsOfCurve = 24;

    public static string Svg(RunRecord record, string site, EmbeddedFont font)
    {
        FlowLayout layout = FlowLayout.Of(record.Ledger, Head);
        SvgSurface paper = new(Width(layout), Height(layout), font);
        Draw(record, site, layout, paper, font);
        return paper.ToString();
    }

    public static byte[] Png(RunRecord record, string site, EmbeddedFont font)
    {
        FlowLayout layout = FlowLayout.Of(record.Ledger, Head);
        using PngSurface paper = new((int)Width(layout), (int)Height(layout), font);
        Draw(record, site, layout, paper, font);
        return paper.ToBytes();
    }

    private static double Width(FlowLayout layout) => Math.Max(720, (2 * Left) + (layout.Columns * Box) + ((layout.Columns - 1) * Between));

    private static double Height(FlowLayout layout) => Math.Ceiling(layout.Bottom + (RoomOfReturn * layout.Bands.Count(band => band.IsReturn)) + Foot);

    private static double LeftOf(FlowNode node) => Left + (node.Column * (Box + Between));

    private static void Draw(RunRecord record, string site, FlowLayout layout, DrawingSurface paper, EmbeddedFont font)
    {
        paper.Text(Left, 32, font.Fitted($"{site}, {record.Name}: where water and solids went", TrendFrame.Title, paper.Width - (2 * Left)), TrendFrame.Title, Palette.Ink);
        paper.Text(Left, 54, "a simulated run; bands are as wide as the litres that passed, but for the thinnest and for returns, which are brown", TrendFrame.Label, Palette.Faint);
        double below = layout.Bottom - RoomOfReturn;
        double aside = StepAside;
        foreach (FlowBand band in layout.Bands.OrderByDescending(band => band.Width))
        {
            below += band.IsReturn ? RoomOfReturn : 0;
            aside += band.IsReturn ? StepAside : 0;
            paper.Polyline([.. Way(band, below, aside)], Ink(band), band.Width);
        }

        foreach (FlowNode node in layout.Nodes)
        {
            DrawBox(node, paper, font);
        }

        foreach (FlowBand band in layout.Bands)
        {
            string words = font.Fitted(band.Words, TrendFrame.Small, Between - (2 * Padding));
            double x = LeftOf(band.To) - Padding;
            double width = font.Width(words, TrendFrame.Small);
            paper.Rectangle(x - width - 2, band.ToY - 6, width + 4, 12, Palette.Paper);
            paper.Text(x, band.ToY + 3.5, words, TrendFrame.Small, Palette.Ink, TextAnchor.End);
        }

        paper.Text(Left, paper.Height - 14, "It supports review by a competent person; it is no proof about the real plant and replaces no measurement.", TrendFrame.Small, Palette.Faint);
    }

    private static void DrawBox(FlowNode node, DrawingSurface paper, EmbeddedFont font)
    {
        double x = LeftOf(node);
        Colour fill = node.Kind == FlowEnd.Tank ? Palette.StepOther : Palette.Step;
        paper.Rectangle(x, node.Top, Box, node.Height, fill);
        paper.Outline(x, node.Top, Box, node.Height, Palette.Frame);
        double middle = node.Top + (node.Height / 2);
        double y = middle + 4 - (LineOfBox / 2 * node.Remarks.Length);
        paper.Text(x + Padding, y, font.Fitted(node.Name, TrendFrame.Label, Box - (2 * Padding)), TrendFrame.Label, Palette.Ink);
        foreach (string remark in node.Remarks)
        {
            y += LineOfBox;
            paper.Text(x + Padding, y + 1, font.Fitted(remark, TrendFrame.Small, Box - (2 * Padding)), TrendFrame.Small, Palette.Faint);
        }
    }

    private static Colour Ink(FlowBand band) =>
        band.IsReturn ? Palette.Mark : band.From.Kind == FlowEnd.Reagent ? Palette.Reagent : Palette.Bar;

    /// <summary>From the right side of one box to the left side of the other; a return goes below all.</summary>
    private static IEnumerable<(double X, double Y)> Way(FlowBand band, double below, double aside)
    {
        double from = LeftOf(band.From) + Box;
        double to = LeftOf(band.To);
        if (band.IsReturn)
        {
            return [(from, band.FromY), (from + aside, band.FromY), (from + aside, below), (to - aside, below), (to - aside, band.ToY), (to, band.ToY)];
        }

        return Enumerable.Range(0, PartsOfCurve + 1).Select(part =>
        {
            double share = part / (double)PartsOfCurve;
            double rise = share * share * (3 - (2 * share));
            return (from + (share * (to - from)), band.FromY + (rise * (band.ToY - band.FromY)));
        });
    }
}
