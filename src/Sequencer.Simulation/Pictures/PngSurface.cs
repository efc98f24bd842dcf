using SkiaSharp;

namespace Sequencer.Simulation.Pictures;

/// <summary>Draws into a bitmap.</summary>
public sealed class PngSurface : DrawingSurface, IDisposable
{
    private const int Quality = 100;

    private readonly SKBitmap _bitmap;
    private readonly SKCanvas _canvas;
    private readonly SKPaint _paint = new() { IsAntialias = true };
    private readonly SKPathEffect _dashes = SKPathEffect.CreateDash([6, 4], 0);
    private readonly EmbeddedFont _font;

    public PngSurface(int width, int height, EmbeddedFont font)
        : base(width, height)
    {
        _font = font;
        _bitmap = new SKBitmap(width, height, SKColorType.Rgba8888, SKAlphaType.Opaque);
        _canvas = new SKCanvas(_bitmap);
        Rectangle(0, 0, width, height, Palette.Paper);
    }

    public byte[] ToBytes()
    {
        _canvas.Flush();
        using SKData data = _bitmap.Encode(SKEncodedImageFormat.Png, Quality);
        return data.ToArray();
    }

    public override void Rectangle(double x, double y, double width, double height, Colour fill)
    {
        Use(fill, SKPaintStyle.Fill, 0, null);
        _canvas.DrawRect((float)x, (float)y, (float)width, (float)height, _paint);
    }

    public override void Line(double fromX, double fromY, double toX, double toY, Colour colour, double thickness = 1, bool dashed = false)
    {
        Use(colour, SKPaintStyle.Stroke, thickness, dashed ? _dashes : null);
        _canvas.DrawLine((float)fromX, (float)fromY, (float)toX, (float)toY, _paint);
    }

    public override void Polyline(IReadOnlyList<(double X, double Y)> points, Colour colour, double thickness)
    {
        if (points.Count == 0)
        {
            return;
        }

        Use(colour, SKPaintStyle.Stroke, thickness, null);
        using SKPath path = new();
        path.MoveTo((float)points[0].X, (float)points[0].Y);
        foreach ((double x, double y) in points.Skip(1))
        {
            path.LineTo((float)x, (float)y);
        }

        _canvas.DrawPath(path, _paint);
    }

    public override void Text(double x, double y, string words, double size, Colour colour, TextAnchor anchor = TextAnchor.Start)
    {
        Use(colour, SKPaintStyle.Fill, 0, null);
        using SKFont font = _font.At((float)size);
        double width = _font.Width(words, size);
        double start = anchor switch
        {
            TextAnchor.Middle => x - (width / 2),
            TextAnchor.End => x - width,
            _ => x,
        };
        _canvas.DrawText(words, (float)start, (float)y, SKTextAlign.Left, font, _paint);
    }

    public void Dispose()
    {
        _dashes.Dispose();
        _paint.Dispose();
        _canvas.Dispose();
        _bitmap.Dispose();
    }

    private void Use(Colour colour, SKPaintStyle style, double thickness, SKPathEffect? effect)
    {
        _paint.Color = new SKColor(colour.Red, colour.Green, colour.Blue);
        _paint.Style = style;
        _paint.StrokeWidth = (float)thickness;
        _paint.PathEffect = effect;
    }
}
