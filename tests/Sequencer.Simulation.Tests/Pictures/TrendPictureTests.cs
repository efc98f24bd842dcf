using System.Xml.Linq;
using Sequencer.Simulation.Pictures;
using Sequencer.Simulation.Records;
using Sequencer.Simulation.Scenarios;
using Sequencer.Simulation.Tests.Tank;
using Sequencer.Testing;

namespace Sequencer.Simulation.Tests.Pictures;

public sealed class TrendPictureTests
{
    private static readonly Scenario Eventful = TankRun.Batch with
    {
        Name = "eventful",
        Actions =
        [
            .. TankRun.Batch.Actions,
            TankRun.At(60, new Deed.Inject("LT101.broken")),
            TankRun.At(90, new Deed.Clear("LT101.broken")),
            TankRun.At(120, new Deed.Press("R101.hold")),
            TankRun.At(180, new Deed.Press("R101.restart")),
            TankRun.At(400, new Deed.LosePower(100)),
            TankRun.At(520, new Deed.Press("R101.restart")),
            TankRun.At(530, new Deed.Manual("P101", ManualMode.On)),
        ],
    };

    [Fact]
    public void The_svg_is_the_golden_one()
    {
        using EmbeddedFont font = new();
        GoldenFile.Matches(TrendPicture.Svg(TankRun.Play(Eventful).Record, TankProgram.Site, font), "tank-eventful.verified.svg");
    }

    [Fact]
    public void The_svg_is_well_formed_and_its_texts_lie_on_the_sheet_and_apart()
    {
        using EmbeddedFont font = new();
        XElement svg = XElement.Parse(TrendPicture.Svg(TankRun.Play(Eventful).Record, TankProgram.Site, font));
        List<(double Left, double Right, double Baseline, double Size, string Words)> texts =
            [.. svg.Descendants().Where(element => element.Name.LocalName == "text").Select(Box)];
        Assert.True(texts.Count > 40, "the picture has hardly any text");
        for (int one = 0; one < texts.Count; one++)
        {
            Assert.InRange(texts[one].Left, 0, TrendPicture.Width);
            Assert.InRange(texts[one].Right, 0, TrendPicture.Width);
            for (int other = one + 1; other < texts.Count; other++)
            {
                bool across = texts[one].Left < texts[other].Right && texts[other].Left < texts[one].Right;
                bool along = Math.Abs(texts[one].Baseline - texts[other].Baseline) < 0.8 * Math.Min(texts[one].Size, texts[other].Size);
                Assert.False(across && along, $"`{texts[one].Words}` and `{texts[other].Words}` overlap");
            }
        }
    }

    [Fact]
    public void The_png_is_a_png_of_the_stated_size_and_the_same_every_time()
    {
        using EmbeddedFont font = new();
        RunRecord record = TankRun.Play(Eventful).Record;
        byte[] png = TrendPicture.Png(record, TankProgram.Site, font);
        Assert.Equal([0x89, (byte)'P', (byte)'N', (byte)'G'], png[..4]);
        Assert.Equal(TrendPicture.Width, (png[16] << 24) | (png[17] << 16) | (png[18] << 8) | png[19]);
        Assert.Equal(TrendPicture.Height, (png[20] << 24) | (png[21] << 16) | (png[22] << 8) | png[23]);
        Assert.Equal(png, TrendPicture.Png(record, TankProgram.Site, font));
        if (Environment.GetEnvironmentVariable("KEEP_PICTURES") is string folder)
        {
            File.WriteAllBytes(Path.Combine(folder, "tank-eventful.png"), png);
        }
    }

    [Fact]
    public void Widths_come_from_the_embedded_font()
    {
        using EmbeddedFont font = new();
        // DejaVu Sans 2.37, table hmtx: H is 1540 units wide, i is 569, of 2048 an em.
        Assert.Equal(1540.0 / 2048 * 10, font.Width("H", 10), 0.01);
        Assert.Equal(569.0 / 2048 * 10, font.Width("i", 10), 0.01);
        Assert.Equal("abcdef", font.Fitted("abcdef", 10, 100));
        Assert.Equal("", font.Fitted("abcdef", 10, 5));
        Assert.EndsWith("…", font.Fitted("abcdefghijkl", 10, 40), StringComparison.Ordinal);
    }

    [Fact]
    public void The_main_colours_differ_in_grey()
    {
        Colour[] colours = [Palette.Curve, Palette.Bar, Palette.Mark, Palette.Paper];
        double[] luminances = [.. colours.Select(colour => colour.Luminance).Order()];
        for (int index = 1; index < luminances.Length; index++)
        {
            Assert.True((luminances[index] + 0.05) / (luminances[index - 1] + 0.05) > 1.2, $"{luminances[index]} and {luminances[index - 1]}");
        }
    }

    private static (double Left, double Right, double Baseline, double Size, string Words) Box(XElement text)
    {
        double x = (double)Attribute(text, "x");
        double width = (double)Attribute(text, "textLength");
        double left = (string?)text.Attribute("text-anchor") switch
        {
            "middle" => x - (width / 2),
            "end" => x - width,
            _ => x,
        };
        return (left, left + width, (double)Attribute(text, "y"), (double)Attribute(text, "font-size"), text.Value);
    }

    private static XAttribute Attribute(XElement element, string name) =>
        element.Attribute(name) ?? throw new InvalidOperationException($"no {name} in {element}");
}
