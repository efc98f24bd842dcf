using Sequencer.Simulation.Metadata;
using Sequencer.Simulation.Records;
using Sequencer.Simulation.Words;

namespace Sequencer.Simulation.Pictures;

/// <summary>One measurement over time with its own axis, its setpoints and limits, and the times its channel was bad.</summary>
internal sealed class CurvePanel(TrendFrame frame, int column)
{
    private const int MostTicks = 5;
    private const double TextHeight = 12;

    /// <summary>Room over and under a curve, as a share of its span, so that no limit lies on the frame.</summary>
    private const double Headroom = 0.04;

    private readonly RunColumn _column = frame.Record.Columns[column];

    public void Draw(double top, double height)
    {
        TrendMark[] marks = [.. frame.Site.Marks.Where(mark => mark.Tag == _column.Name)];
        AxisScale scale = Scale(marks, top, height);
        frame.Ground(top, height);
        BadTimes(top, height);
        frame.TimeGrid(top, height);
        Axis(scale, top, height);
        Curve(scale);
        RightLabels(marks, scale, top, height);
        frame.Paper.Outline(frame.Left, top, frame.Right - frame.Left, height, Palette.Frame);
        Name(top);
    }

    private void Name(double top)
    {
        string unit = _column.Unit.Length == 0 ? "" : $", {_column.Unit}";
        frame.Paper.Text(TrendFrame.Edge, top + 12, _column.Name + unit, TrendFrame.Label, Palette.Curve);
        string description = frame.Font.Fitted(_column.Description, TrendFrame.Small, frame.Left - TrendFrame.Edge - 44);
        frame.Paper.Text(TrendFrame.Edge, top + 26, description, TrendFrame.Small, Palette.Faint);
    }

    private AxisScale Scale(TrendMark[] marks, double top, double height)
    {
        double lowest = double.PositiveInfinity;
        double highest = double.NegativeInfinity;
        for (int row = 0; row < frame.Record.Table.Rows; row++)
        {
            double value = frame.Record.Table.Value(row, column);
            lowest = Math.Min(lowest, value);
            highest = Math.Max(highest, value);
        }

        foreach (TrendMark mark in marks)
        {
            lowest = Math.Min(lowest, mark.Value);
            highest = Math.Max(highest, mark.Value);
        }

        double room = (highest - lowest) * Headroom;
        return AxisScale.Value(lowest - room, highest + room, top + height - 4, top + 4, MostTicks, Math.Pow(10, -_column.Decimals));
    }

    private void Axis(AxisScale scale, double top, double height)
    {
        int decimals = Math.Max(0, (int)Math.Ceiling(-Math.Log10(scale.TickStep) - 1e-9));
        foreach (double tick in scale.Ticks())
        {
            double y = scale.Pixel(tick);
            frame.Paper.Line(frame.Left, y, frame.Right, y, Palette.Grid);
            if (y > top + 3 && y < top + height - 2)
            {
                frame.Paper.Text(frame.Left - 6, y + 3.6, ValueWords.Of(tick, decimals, ""), TrendFrame.Small, Palette.Ink, TextAnchor.End);
            }
        }
    }

    private void BadTimes(double top, double height)
    {
        int fault = frame.Record.Column(_column.Name + ".fault");
        for (int row = 0; fault >= 0 && row < frame.Record.Table.Rows; row++)
        {
            if (frame.Record.Table.Value(row, fault) != 0)
            {
                long to = row + 1 < frame.Record.Table.Rows ? frame.Record.Table.Scan(row + 1) : frame.Record.Scans;
                frame.Fill(frame.Record.Table.Scan(row), to, top, height, Palette.BadChannel);
            }
        }
    }

    private void Curve(AxisScale scale)
    {
        CurveThinner curve = new();
        for (int row = 0; row < frame.Record.Table.Rows; row++)
        {
            curve.Add(frame.At(frame.Record.Table.Scan(row)), scale.Pixel(frame.Record.Table.Value(row, column)));
        }

        frame.Paper.Polyline(curve.Finish(), Palette.Curve, 1.6);
    }

    /// <summary>Setpoints, limits and the last value, moved apart where they would overlap.</summary>
    private void RightLabels(TrendMark[] marks, AxisScale scale, double top, double height)
    {
        double last = frame.Record.Table.Value(frame.Record.Table.Rows - 1, column);
        List<(double Y, string Words, Colour Colour)> labels = [(scale.Pixel(last), ValueWords.Of(last, _column.Decimals, ""), Palette.Curve)];
        foreach (TrendMark mark in marks)
        {
            double y = scale.Pixel(mark.Value);
            frame.Paper.Line(frame.Left, y, frame.Right, y, Palette.Mark, 1.2, dashed: true);
            labels.Add((y, $"{mark.Label} {ValueWords.Of(mark.Value, _column.Decimals, "")}", Palette.Mark));
        }

        labels.Sort((one, other) => one.Y.CompareTo(other.Y));
        double[] places = Apart([.. labels.Select(label => label.Y)], top + 4, top + height - 4);
        for (int index = 0; index < labels.Count; index++)
        {
            string words = frame.Font.Fitted(labels[index].Words, TrendFrame.Small, TrendFrame.RightMargin - 14);
            frame.Paper.Line(frame.Right, labels[index].Y, frame.Right + 6, places[index], labels[index].Colour);
            frame.Paper.Text(frame.Right + 9, places[index] + 3.6, words, TrendFrame.Small, labels[index].Colour);
        }
    }

    /// <summary>The places moved down, then back up from the bottom, until each has room for its text.</summary>
    private static double[] Apart(double[] places, double top, double bottom)
    {
        double next = top;
        for (int index = 0; index < places.Length; index++)
        {
            places[index] = Math.Max(places[index], next);
            next = places[index] + TextHeight;
        }

        double limit = bottom;
        for (int index = places.Length - 1; index >= 0; index--)
        {
            places[index] = Math.Min(places[index], limit);
            limit = places[index] - TextHeight;
        }

        return places;
    }
}
