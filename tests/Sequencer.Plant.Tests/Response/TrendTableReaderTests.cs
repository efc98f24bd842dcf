using Sequencer.Plant.Response;
using Sequencer.Text;

namespace Sequencer.Plant.Tests.Response;

/// <summary>A recorded trend: what is kept of it, and each mistake with its place.</summary>
public sealed class TrendTableReaderTests
{
    private static readonly HashSet<string> Wanted = ["AT1", "P1"];
    private static readonly HashSet<string> Words = ["U.steps"];

    [Fact]
    public void Columns_that_are_wanted_are_kept_with_their_units()
    {
        TrendTable table = Read("time min,U.state,AT1 pH,P1\n0,Idle,7.1,0\n0.5,Running,,1\r\n1,Running,6.9,0\n", out _)!;
        Assert.Equal([0.0, 30.0, 60.0], table.Seconds);
        Assert.Equal(("AT1", "pH"), (table.Columns[0].Name, table.Columns[0].Unit));
        Assert.Equal([7.1, double.NaN, 6.9], table.Find("AT1")!.Values);
        Assert.Equal([new Pulse(30.0, 30.0)], table.Pulses(table.Find("P1")!));
    }

    [Fact]
    public void Steps_are_kept_as_words_and_give_the_stretches_of_each()
    {
        TrendTable table = Read("time s,U.steps,AT1 pH\n0,10,7\n1,10+20,7\n2,20,7\n3,,7\n4,20,7\n5,20,7\n", out _)!;
        TrendWords steps = table.FindWords("U.steps")!;
        Assert.Equal(["10", "10+20", "20", "", "20", "20"], steps.Values);
        Assert.Equal([new Stretch(1.0, 3.0), new Stretch(4.0, 5.0)], table.Stretches(steps, words => words.Split('+').Contains("20")));
    }

    [Theory]
    [InlineData("AT1 pH,time s\n7,0\n", "SEQ0860", "AT1 pH")]
    [InlineData("", "SEQ0860", "")]
    [InlineData("time s,AT1 pH\n0,7\n1,7,1\n", "SEQ0861", "1,7,1")]
    [InlineData("time s,AT1 pH\n0,7\n0,7\n", "SEQ0862", "0")]
    [InlineData("time s,AT1 pH\n08:30:00,7\n", "SEQ0862", "08:30:00")]
    [InlineData("time s,AT1 pH\nNaN,7\n", "SEQ0862", "NaN")]
    public void A_mistake_is_told_with_its_place(string text, string code, string span)
    {
        Assert.Null(Read(text, out Diagnostic[] found));
        Diagnostic diagnostic = Assert.Single(found);
        Assert.Equal((code, span), (diagnostic.Code, diagnostic.Span.Text.ToString()));
    }

    [Fact]
    public void More_columns_than_there_may_be_are_refused()
    {
        Assert.Null(Read("time s" + string.Concat(Enumerable.Repeat(",X", 3_000)) + "\n", out Diagnostic[] found));
        Assert.Equal("SEQ0802", Assert.Single(found).Code);
    }

    private static TrendTable? Read(string text, out Diagnostic[] found)
    {
        DiagnosticBag diagnostics = new();
        TrendTable? table = TrendTableReader.Read(new SourceText("trend.csv", text), Wanted, Words, diagnostics);
        found = [.. diagnostics.InOrder()];
        return table;
    }
}
