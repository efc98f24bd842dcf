using Sequencer.Plant.Titration;
using Sequencer.Text;

namespace Sequencer.Plant.Tests.Titration;

public sealed class DoseTableReaderTests
{
    private const string Good =
        "sample, 500 mL\ntemperature, 20 C\ntitrant, base, 0.1 mol/L\nbatch, 10 m3\nreagent, base, 17.6 mol/L # caustic\nsetpoint, 9.0\n\nmL, pH\n"
        + "0, 2.05\n25, 2.40\n40, 2.96\n45, 3.44\n49, 4.69\n51, 9.30\n55, 10.95\n";

    [Fact]
    public void A_table_is_read()
    {
        DoseTable table = Read(Good, out Diagnostic[] found) ?? throw new InvalidOperationException("not read");
        Assert.Empty(found);
        Assert.Equal(0.5, table.Titration.SampleLitres);
        Assert.Equal(10_000, table.BatchLitres);
        Assert.Equal(17.6, table.ReagentStrength);
        Assert.Equal((0.055, 10.95), table.Titration.Points[^1]);
        Assert.Equal(9.0, Assert.Single(table.Setpoints).Value);
    }

    /// <summary>Code, and the line that it names.</summary>
    [Theory]
    [InlineData("sample, 500 mL\n", "", "SEQ0855", 1)]
    [InlineData("25, 2.40", "25, 2,40", "SEQ0850", 10)]
    [InlineData("titrant, base, 0.1 mol/L", "titrant, 0.1 mol/L", "SEQ0850", 3)]
    [InlineData("40, 2.96", "25, 2.96", "SEQ0852", 11)]
    [InlineData("setpoint, 9.0", "setpoint, 11.5", "SEQ0853", 6)]
    [InlineData("reagent, base", "reagent, acid", "SEQ0854", 6)]
    [InlineData("25, 2.40\n40, 2.96\n45, 3.44\n", "", "SEQ0851", 13)]
    [InlineData("batch, 10 m3", "batch, 10 kg", "SEQ0810", 4)]
    [InlineData("batch, 10 m3", "batch, ten m3", "SEQ0807", 4)]
    [InlineData("batch, 10 m3", "batch, 10 barrels", "SEQ0809", 4)]
    [InlineData("batch, 10 m3", "bach, 10 m3", "SEQ0805", 4)]
    [InlineData("temperature, 20 C", "temperature, 99 C", "SEQ0808", 2)]
    [InlineData("temperature, 20 C", "sample, 20 mL", "SEQ0804", 2)]
    [InlineData("titrant, base", "titrant, bass", "SEQ0811", 3)]
    [InlineData("45, 3.44", "45, 34.4", "SEQ0808", 12)]
    public void A_mistake_is_told_with_its_line(string written, string instead, string code, int line)
    {
        Assert.Contains(written, Good, StringComparison.Ordinal);
        Assert.Null(Read(Good.Replace(written, instead, StringComparison.Ordinal), out Diagnostic[] found));
        Assert.Contains(found, diagnostic => diagnostic.Code == code && diagnostic.Span.Start.Line == line);
    }

    /// <summary>One cause is told once: a line with a decimal comma is not missing beside that, and a value that is wrong is no missing one.</summary>
    [Theory]
    [InlineData("titrant, base, 0.1 mol/L", "titrant, base, 0,1 mol/L", "SEQ0850")]
    [InlineData("setpoint, 9.0", "setpoint, 9,0", "SEQ0850")]
    [InlineData("batch, 10 m3", "batch", "SEQ0850")]
    [InlineData("sample, 500 mL", "sample, 500", "SEQ0809")]
    public void A_line_that_is_not_understood_is_told_once(string written, string instead, string code)
    {
        Read(Good.Replace(written, instead, StringComparison.Ordinal), out Diagnostic[] found);
        Assert.Equal(code, Assert.Single(found).Code);
    }

    /// <summary>
    /// Between pH 4.69 and 9.30, which 4.00e-4 eq/L part, 22.7 mL for each m3 of a reagent of 17.6 mol/L: nothing tells how much of it lies below pH 7. At pH 9 a point is near.
    /// </summary>
    [Fact]
    public void Where_no_point_is_near_the_dose_is_less_sure()
    {
        DoseTable table = Read(Good.Replace("setpoint, 9.0", "setpoint, 7.0\nsetpoint, 9.0", StringComparison.Ordinal), out _) ?? throw new InvalidOperationException("not read");
        DoseEstimate far = table.Dose(7.0);
        Assert.Equal((4.69, 9.30), (far.Between?.LowPh, far.Between?.HighPh));
        Assert.Equal(10 * 22.7e-3, far.Between!.Value.Litres, 10 * 2e-3);
        Assert.True(far.Uncertainty >= far.Between.Value.Litres / Math.Sqrt(3.0));
        Assert.Null(table.Dose(9.0).Between);
    }

    /// <summary>Any part of a table, and any of its characters changed, is read or told about; nothing is thrown.</summary>
    [Fact]
    public void A_damaged_table_is_told_about()
    {
        Random random = new(1);
        for (int count = 0; count < 300; count++)
        {
            char[] text = Good[..random.Next(Good.Length + 1)].ToCharArray();
            for (int change = random.Next(4); change > 0 && text.Length > 0; change--)
            {
                text[random.Next(text.Length)] = "0,.#\n-eE \u00fc"[random.Next(10)];
            }

            DoseTable? table = Read(new string(text), out Diagnostic[] found);
            Assert.True(table is not null || found.Length > 0);
        }
    }

    private static DoseTable? Read(string text, out Diagnostic[] found)
    {
        DiagnosticBag bag = new();
        DoseTable? table = DoseTableReader.Read(new SourceText("table.csv", text), bag);
        found = [.. bag.InOrder()];
        return table;
    }
}
