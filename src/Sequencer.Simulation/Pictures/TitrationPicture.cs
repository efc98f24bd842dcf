using System.Globalization;
using Sequencer.Plant.Titration;
using Sequencer.Simulation.Words;

namespace Sequencer.Simulation.Pictures;

/// <summary>A titration curve: what was measured, the model through it, and the doses for the setpoints.</summary>
public static class TitrationPicture
{
    public const int Width = 1100;
    public const int Height = 720;

    private const double Left = 80;
    private const double Right = 1060;
    private const double Top = 70;
    private const double Bottom = 640;
    private const double Dot = 5;
    private const int CurvePoints = 400;
    private const int MostTicks = 12;

    public static string Svg(string title, DoseTable table, EmbeddedFont font)
    {
        SvgSurface paper = new(Width, Height, font);
        Draw(title, table, paper, font);
        return paper.ToString();
    }

    public static byte[] Png(string title, DoseTable table, EmbeddedFont font)
    {
        using PngSurface paper = new(Width, Height, font);
        Draw(title, table, paper, font);
        return paper.ToBytes();
    }

    private static void Draw(string title, DoseTable table, DrawingSurface paper, EmbeddedFont font)
    {
        double each = table.BatchLitres / table.ReagentStrength;
        (double Litres, double Ph)[] measured = [.. table.Titration.Points.Select(point => (table.Titration.BaseAdded(point.Litres) * each, point.Ph))];
        double most = Math.Max(measured.Max(point => point.Litres), 1e-6);
        AxisScale across = AxisScale.Value(Math.Min(0.0, measured.Min(point => point.Litres)), most, Left, Right, MostTicks, 1e-9);
        AxisScale up = AxisScale.Value(Math.Floor(table.LowestPh), Math.Ceiling(table.HighestPh), Bottom, Top, MostTicks, 0.1);
        paper.Text(Left, 30, font.Fitted(title, TrendFrame.Title, Right - Left), TrendFrame.Title, Palette.Ink);
        string batch = string.Create(
            CultureInfo.InvariantCulture,
            $"a batch of {table.BatchLitres:0.###} L, dosed with {(table.ReagentStrength > 0 ? "base" : "acid")} of {Math.Abs(table.ReagentStrength):0.###} mol/L (of equivalents)");
        paper.Text(Left, 50, batch, TrendFrame.Label, Palette.Faint);
        Grid(paper, across, up);
        paper.Polyline(Model(table, each, across, up), Palette.Curve, 1.6);
        foreach ((double litres, double ph) in measured)
        {
            paper.Rectangle(across.Pixel(litres) - (Dot / 2), up.Pixel(ph) - (Dot / 2), Dot, Dot, Palette.Action);
        }

        foreach (double setpoint in table.Setpoints.Select(setpoint => setpoint.Value).Distinct())
        {
            DoseEstimate estimate = table.Dose(setpoint);
            double dose = estimate.Dose;
            paper.Line(Left, up.Pixel(setpoint), across.Pixel(dose), up.Pixel(setpoint), Palette.Mark, 1.2, dashed: true);
            paper.Line(across.Pixel(dose), up.Pixel(setpoint), across.Pixel(dose), Bottom, Palette.Mark, 1.2, dashed: true);
            paper.Text(Left + 6, up.Pixel(setpoint) - 4, string.Create(CultureInfo.InvariantCulture, $"pH {setpoint:0.0#}: {DoseWords.Litres(dose, estimate.Uncertainty)}"), TrendFrame.Label, Palette.Mark);
        }

        paper.Outline(Left, Top, Right - Left, Bottom - Top, Palette.Frame);
        paper.Text(Right, Height - 30, "reagent for the batch, L", TrendFrame.Label, Palette.Ink, TextAnchor.End);
        paper.Text(Left - 40, Top - 8, "pH", TrendFrame.Label, Palette.Ink);
        paper.Text(Left, Height - 10, "squares: measured; line: fitted. A jar is not a plant: dose less, wait, and look.", TrendFrame.Small, Palette.Faint);
    }

    private static void Grid(DrawingSurface paper, AxisScale across, AxisScale up)
    {
        foreach (double tick in across.Ticks())
        {
            paper.Line(across.Pixel(tick), Top, across.Pixel(tick), Bottom, Palette.Grid);
            paper.Text(across.Pixel(tick), Bottom + 18, string.Create(CultureInfo.InvariantCulture, $"{tick:0.######}"), TrendFrame.Small, Palette.Ink, TextAnchor.Middle);
        }

        foreach (double tick in up.Ticks())
        {
            paper.Line(Left, up.Pixel(tick), Right, up.Pixel(tick), Palette.Grid);
            paper.Text(Left - 8, up.Pixel(tick) + 4, string.Create(CultureInfo.InvariantCulture, $"{tick:0.##}"), TrendFrame.Small, Palette.Ink, TextAnchor.End);
        }
    }

    /// <summary>The model's curve between the lowest and the highest pH measured.</summary>
    private static List<(double X, double Y)> Model(DoseTable table, double each, AxisScale across, AxisScale up)
    {
        AcidityModel model = table.Model.Whole;
        List<(double X, double Y)> points = [];
        for (int number = 0; number <= CurvePoints; number++)
        {
            double ph = table.LowestPh + ((table.HighestPh - table.LowestPh) * number / CurvePoints);
            double litres = model.Dose(ph, table.Titration.TitrantStrength) * table.Titration.TitrantStrength * each;
            points.Add((across.Pixel(litres), up.Pixel(ph)));
        }

        return points;
    }
}
