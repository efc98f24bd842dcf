using SkiaSharp;

namespace Sequencer.Simulation.Pictures;

/// <summary>
/// The one font of all pictures, embedded so that no machine's own fonts change a picture or a
/// measure. See Fonts/LICENCE.txt.
/// </summary>
public sealed class EmbeddedFont : IDisposable
{
    private const string Resource = "Sequencer.Simulation.Pictures.Fonts.DejaVuSansSubset.ttf";
    private const float MeasuredSize = 1000;

    private readonly SKTypeface _typeface;
    private readonly SKFont _measuring;

    public EmbeddedFont()
    {
        using Stream stream = typeof(EmbeddedFont).Assembly.GetManifestResourceStream(Resource)
            ?? throw new InvalidOperationException($"the assembly lacks {Resource}");
        _typeface = SKTypeface.FromStream(stream) ?? throw new InvalidOperationException($"{Resource} is no font");
        _measuring = At(MeasuredSize);
    }

    /// <summary>The width of a text in pixels.</summary>
    public double Width(string words, double size) => _measuring.MeasureText(words) * size / MeasuredSize;

    /// <summary>The text, or as much of its beginning as fits with an ellipsis; empty where not even two letters fit.</summary>
    public string Fitted(string words, double size, double width)
    {
        if (Width(words, size) <= width)
        {
            return words;
        }

        for (int length = words.Length - 1; length >= 2; length--)
        {
            string cut = words[..length].TrimEnd() + "…";
            if (Width(cut, size) <= width)
            {
                return cut;
            }
        }

        return "";
    }

    public void Dispose()
    {
        _measuring.Dispose();
        _typeface.Dispose();
    }

    internal SKFont At(float size) => new(_typeface, size)
    {
        Hinting = SKFontHinting.None,
        LinearMetrics = true,
        Subpixel = true,
        Edging = SKFontEdging.Antialias,
    };
}
