using Sequencer.Plant.Yaml;
using Sequencer.Text;

namespace Sequencer.Plant.Tests.Yaml;

public sealed class YamlFieldsTests
{
    private static YamlFields Fields(string text)
    {
        DiagnosticBag diagnostics = new();
        YamlMapping root = YamlReader.Read(new SourceText("plant.yaml", text), diagnostics)
            ?? throw new InvalidOperationException("the test's text is YAML");
        return new YamlFields(root, diagnostics);
    }

    private static string[] Messages(YamlFields fields) =>
        [.. fields.Diagnostics.InOrder().Select(diagnostic => $"{diagnostic.Span.Start} {diagnostic.Code} {diagnostic.Message}")];

    [Theory]
    [InlineData("12 m3/h", Dimension.VolumeFlow, 12000.0 / 3600.0)]
    [InlineData("90L/h", Dimension.VolumeFlow, 0.025)]
    [InlineData("-1.5e1 C", Dimension.Temperature, -15.0)]
    [InlineData("0.5 %", Dimension.Fraction, 0.005)]
    [InlineData("2.5 mmol/L", Dimension.AmountConcentration, 0.0025)]
    [InlineData("1.5 h", Dimension.Time, 5400.0)]
    [InlineData("50 mm", Dimension.Length, 0.05)]
    public void Quantities_come_in_the_base_unit(string text, Dimension dimension, double expected)
    {
        YamlFields fields = Fields($"x: {text}");
        Assert.Equal(expected, fields.RequiredQuantity("x", dimension, NumberRange.Any), 1e-12);
        Assert.Empty(Messages(fields));
    }

    [Fact]
    public void All_mistakes_of_a_group_are_found_in_one_pass_each_at_its_place()
    {
        YamlFields fields = Fields("volume: 1e999 m3\nrate: 5\nlag: 3 kg\nstart: NaN s\ndelay: 4 fortnights\nmode: opne\ncount: 1.5\nspare: 1\n");
        fields.RequiredQuantity("volume", Dimension.Volume, NumberRange.Positive);
        fields.RequiredQuantity("rate", Dimension.VolumeFlow, NumberRange.Positive);
        fields.RequiredQuantity("lag", Dimension.Time, NumberRange.Positive);
        fields.RequiredQuantity("start", Dimension.Time, NumberRange.Positive);
        fields.RequiredQuantity("delay", Dimension.Time, NumberRange.Positive);
        fields.RequiredWord("mode", ["open", "closed"]);
        fields.RequiredWholeNumber("count", 1, 10);
        fields.RequiredText("name");
        fields.RejectUnknownKeys();
        Assert.Equal(
            [
                "1:1 SEQ0806 key `name` is missing",
                "1:9 SEQ0808 `volume` is `1e999 m3`, outside 1E-12 .. 1E+09 m3",
                "2:7 SEQ0809 `rate` has no unit",
                "3:6 SEQ0810 unit `kg` does not fit `lag`",
                "4:8 SEQ0807 `start` needs a number with its unit, but `NaN s` is written",
                "5:8 SEQ0809 unit `fortnights` of `delay` is not known",
                "6:7 SEQ0811 `opne` is not a choice for `mode`",
                "7:8 SEQ0807 `count` needs a whole number, but `1.5` is written",
                "8:1 SEQ0805 key `spare` means nothing here",
            ],
            Messages(fields));
    }

    [Fact]
    public void An_empty_value_is_marked_at_its_key()
    {
        YamlFields fields = Fields("tanks:\nname:\n");
        Assert.Empty(fields.Each("tanks"));
        fields.RequiredText("name");
        Assert.Equal(
            ["2:1 SEQ0807 `name` needs a text, but nothing is written"],
            Messages(fields).Where(message => message.Contains("name", StringComparison.Ordinal)));
    }

    [Fact]
    public void A_refused_value_is_reported_once()
    {
        YamlFields fields = Fields("a: *x\n");
        fields.RequiredNumber("a", NumberRange.Any);
        Assert.Equal("SEQ0803", Assert.Single(fields.Diagnostics.InOrder()).Code);
    }

    [Fact]
    public void Named_groups_lists_and_flags_are_read_in_written_order()
    {
        YamlFields fields = Fields("tanks:\n  B: {on: yes}\n  A: {on: no}\nlist: [q, p]\nitems:\n  - {n: 3}\n");
        Assert.Equal(["B True", "A False"], fields.Each("tanks").Select(tank => $"{tank.Name.Value} {tank.Fields.OptionalFlag("on", false)}"));
        Assert.Equal(["q", "p"], fields.EachText("list").Select(text => text.Value));
        Assert.Equal(3, Assert.Single(fields.EachItem("items")).RequiredWholeNumber("n", 0, 9));
        Assert.Empty(Messages(fields));
    }
}
