namespace Sequencer.Simulation.Pictures;

/// <summary>
/// What a picture is drawn on: lengths in pixels from the top left corner. Text stands on its
/// baseline.
/// </summary>
public abstract class DrawingSurface
{
    protected DrawingSurface(double width, double height)
    {
        Width = width;
        Height = height;
    }

    public double Width { get; }

    public double Height { get; }

    public abstract void Rectangle(double x, double y, double width, double height, Colour fill);

    public abstract void Line(double fromX, double fromY, double toX, double toY, Colour colour, double thickness = 1, bool dashed = false);

    public abstract void Polyline(IReadOnlyList<(double X, double Y)> points, Colour colour, double thickness);

    public abstract void Text(double x, double y, string words, double size, Colour colour, TextAnchor anchor = TextAnchor.Start);

    /// <summary>A rectangle drawn by its outline only.</summary>
    public void Outline(double x, double y, double width, double height, Colour colour)
    {
        Line(x, y, x + width, y, colour);
        Line(x + width, y, x + width, y + height, colour);
        Line(x + width, y + height, x, y + height, colour);
        Line(x, y + height, x, y, colour);
    }
}
