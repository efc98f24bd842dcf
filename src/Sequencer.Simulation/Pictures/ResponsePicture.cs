using System.Globalization;
using Sequencer.Plant.Response;
using Sequencer.Simulation.Words;

namespace Sequencer.Simulation.Pictures;

/// <summary>A reading after pulses of a reagent: what was recorded, the model through it, and the pulses.</summary>
public sealed class ResponsePicture(string title, string unit, double[] seconds, double[] values, PulseResponse response, EmbeddedFont font)
{
    public const int Width = 1100;
    public const int Height = 560;

    private const double Left = 80;
    private const double Right = 1070;
    private const double Top = 70;
    private const double Bottom = 470;
    private const double PulseTop = 480;
    private const double PulseBottom = 500;
    private const int CurvePoints = 900;
    private const int MostTicks = 10;
    private const double Before = 60.0;
    private const double Tail = 300.0;

    public string Svg()
    {
        SvgSurface paper = new(Width, Height, font);
        Draw(paper);
        return paper.ToString();
    }

    public byte[] Png()
    {
        using PngSurface paper = new(Width, Height, font);
        Draw(paper);
        return paper.ToBytes();
    }

    private void Draw(DrawingSurface paper)
    {
        double from = response.Pulses[0].Start - Before;
        double to = Math.Min(response.Pulses[^1].End + Tail, response.Seen.To);
        (double Time, double Value)[] recorded =
            [.. seconds.Zip(values).Where(pair => pair.First >= from && pair.First <= to && double.IsFinite(pair.Second))];
        AxisScale time = AxisScale.Time(to - from, Left, Right, MostTicks);
        double lowest = recorded.Min(pair => pair.Value);
        double highest = recorded.Max(pair => pair.Value);
        AxisScale up = AxisScale.Value(lowest, highest, Bottom, Top, MostTicks, 0.01);
        paper.Text(Left, 30, font.Fitted(title, TrendFrame.Title, Right - Left), TrendFrame.Title, Palette.Ink);
        string found = string.Create(
            CultureInfo.InvariantCulture,
            $"recorded (dots) and a dead time of {Words(response.DeadTimeSeconds)} with a lag of {Words(response.LagSeconds)} (line)");
        paper.Text(Left, 50, found, TrendFrame.Label, Palette.Faint);
        Grid(paper, time, up);
        foreach ((double at, double value) in recorded)
        {
            paper.Rectangle(time.Pixel(at - from) - 1.5, up.Pixel(value) - 1.5, 3, 3, Palette.Action);
        }

        paper.Polyline([.. Enumerable.Range(0, CurvePoints + 1).Select(index => to + ((from - to) * (CurvePoints - index) / CurvePoints)).Select(at => (time.Pixel(at - from), up.Pixel(response.At(at))))], Palette.Curve, 1.6);
        foreach (Pulse pulse in response.Pulses)
        {
            double start = time.Pixel(pulse.Start - from);
            paper.Rectangle(start, PulseTop, Math.Max(1.5, time.Pixel(pulse.End - from) - start), PulseBottom - PulseTop, Palette.Mark);
        }

        paper.Text(Left - 6, PulseBottom - 6, "pulses", TrendFrame.Small, Palette.Ink, TextAnchor.End);
        paper.Text(Left, Height - 12, string.Create(CultureInfo.InvariantCulture, $"minutes after {from:0} s of the trend"), TrendFrame.Label, Palette.Ink);
    }

    private static string Words(Estimate time) => time.IsDetermined
        ? string.Create(CultureInfo.InvariantCulture, $"{time.Value:0.0} s (standard error {time.StandardError:0.0} s)")
        : string.Create(CultureInfo.InvariantCulture, $"{time.Value:0.0} s (standard error {time.StandardError:0.0} s: NOT DETERMINED)");

    private void Grid(DrawingSurface paper, AxisScale time, AxisScale up)
    {
        foreach (double tick in time.Ticks())
        {
            paper.Line(time.Pixel(tick), Top, time.Pixel(tick), PulseBottom, Palette.Grid);
            paper.Text(time.Pixel(tick), PulseBottom + 16, ValueWords.Of(tick / 60.0, time.TickStep < 60 ? 1 : 0, ""), TrendFrame.Small, Palette.Ink, TextAnchor.Middle);
        }

        int decimals = Math.Max(0, (int)Math.Ceiling(-Math.Log10(up.TickStep) - 1e-9));
        foreach (double tick in up.Ticks())
        {
            paper.Line(Left, up.Pixel(tick), Right, up.Pixel(tick), Palette.Grid);
            paper.Text(Left - 6, up.Pixel(tick) + 3.6, ValueWords.Of(tick, decimals, ""), TrendFrame.Small, Palette.Ink, TextAnchor.End);
        }

        paper.Text(Left - 6, Top - 10, unit, TrendFrame.Label, Palette.Ink, TextAnchor.End);
        paper.Outline(Left, Top, Right - Left, Bottom - Top, Palette.Frame);
    }
}
