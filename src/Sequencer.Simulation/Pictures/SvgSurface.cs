using System.Globalization;
using System.Security;
using System.Text;

namespace Sequencer.Simulation.Pictures;

/// <summary>Draws into scalable vector graphics; texts carry their measured width, so that any sans-serif font fits.</summary>
public sealed class SvgSurface : DrawingSurface
{
    private readonly StringBuilder _body = new();
    private readonly EmbeddedFont _font;

    public SvgSurface(double width, double height, EmbeddedFont font)
        : base(width, height)
    {
        _font = font;
        Rectangle(0, 0, width, height, Palette.Paper);
    }

    public override string ToString() =>
        string.Create(CultureInfo.InvariantCulture, $"<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{Width:0.##}\" height=\"{Height:0.##}\" viewBox=\"0 0 {Width:0.##} {Height:0.##}\" font-family=\"DejaVu Sans, sans-serif\">\n{_body}</svg>\n");

    public override void Rectangle(double x, double y, double width, double height, Colour fill) =>
        Append($"<rect x=\"{x:0.##}\" y=\"{y:0.##}\" width=\"{width:0.##}\" height=\"{height:0.##}\" fill=\"{fill.Hex}\"/>\n");

    public override void Line(double fromX, double fromY, double toX, double toY, Colour colour, double thickness = 1, bool dashed = false)
    {
        string dashes = dashed ? " stroke-dasharray=\"6 4\"" : "";
        Append($"<line x1=\"{fromX:0.##}\" y1=\"{fromY:0.##}\" x2=\"{toX:0.##}\" y2=\"{toY:0.##}\" stroke=\"{colour.Hex}\" stroke-width=\"{thickness:0.##}\"{dashes}/>\n");
    }

    public override void Polyline(IReadOnlyList<(double X, double Y)> points, Colour colour, double thickness)
    {
        _body.Append("<polyline points=\"");
        for (int index = 0; index < points.Count; index++)
        {
            Append($"{(index == 0 ? "" : " ")}{points[index].X:0.#},{points[index].Y:0.#}");
        }

        Append($"\" fill=\"none\" stroke=\"{colour.Hex}\" stroke-width=\"{thickness:0.##}\" stroke-linejoin=\"round\"/>\n");
    }

    public override void Text(double x, double y, string words, double size, Colour colour, TextAnchor anchor = TextAnchor.Start)
    {
        string place = anchor switch
        {
            TextAnchor.Middle => " text-anchor=\"middle\"",
            TextAnchor.End => " text-anchor=\"end\"",
            _ => "",
        };
        Append($"<text x=\"{x:0.##}\" y=\"{y:0.##}\" font-size=\"{size:0.##}\" fill=\"{colour.Hex}\"{place} textLength=\"{_font.Width(words, size):0.#}\" lengthAdjust=\"spacingAndGlyphs\">{SecurityElement.Escape(words)}</text>\n");
    }

    private void Append(FormattableString markup) => _body.Append(markup.ToString(CultureInfo.InvariantCulture));
}
