using System.Text.RegularExpressions;
using System.Xml.Linq;
using Sequencer.Export.Equivalence;
using Sequencer.Export.Exchange;
using Sequencer.Export.Tests.Equivalence;
using Sequencer.Export.Tests.Writing;
using Sequencer.Export.Writing;
using Sequencer.Proof;
using Sequencer.StructuredText;
using Sequencer.Testing;
using Sequencer.Text;

namespace Sequencer.Export.Tests.Exchange;

/// <summary>The exchange file holds what the text beside it holds: what is made from it again is the same text, word by word, and is proved equal.</summary>
public sealed partial class ExchangeTests
{
    public static TheoryData<TextEdition, StateForm, int?> Dialects => new()
    {
        { TextEdition.Third, StateForm.Enumerated, null },
        { TextEdition.Second, StateForm.Integer, 20 },
    };

    [Theory]
    [MemberData(nameof(Dialects))]
    public void Of_two_units_it_is_the_same_text_again(TextEdition edition, StateForm states, int? longestName)
    {
        string text = SiteExport.Of(new TextDialect(edition, states, longestName), SiteExport.First, SiteExport.Second).Text;
        string again = ExchangeText.Of(ExchangeWriter.Write("bench", "A", text));
        Assert.Equal(Tokens(text), Tokens(again));
        ReadingResult read = StructuredTextReader.Read(new SourceText("again.st", again), new ReadingOptions());
        Assert.True(read.Diagnostics.IsEmpty, DiagnosticRenderer.Render(read.Diagnostics));
        Assert.NotNull(read.System);
    }

    [Theory]
    [InlineData("one-pit", "pit.seq")]
    [InlineData("marlpit-wharf", "reaction.seq")]
    public void The_text_made_from_it_is_proved_equal(string folder, string file)
    {
        DemoExport site = new(folder, file);
        string again = ExchangeText.Of(ExchangeWriter.Write(folder, "A", site.Export.Text));
        Assert.Equal(Tokens(site.Export.Text), Tokens(again));
        Assert.IsType<ProvedEqual>(site.Decide(again, ProofOptions.Default));
    }

    [Fact]
    public void It_says_what_it_is_and_keeps_the_remarks()
    {
        string file = ExchangeWriter.Write("bench", "A", SiteExport.Of(SiteExport.First));
        GoldenFile.Matches(file[..file.IndexOf("<FunctionBlock name=\"FB_A\"", StringComparison.Ordinal)], "exchange-head.verified.xml");
        XDocument document = XDocument.Parse(file);
        XElement pump = document.Descendants(ExchangeNames.Space + "Variable").First(variable => variable.Attribute("name")?.Value == "P1");
        Assert.Equal("First pump: running", pump.Element(ExchangeNames.Space + "Documentation")?.Value);
    }

    /// <summary>What XML has for itself, in what an author may write.</summary>
    [Fact]
    public void Marks_of_xml_in_titles_do_no_harm()
    {
        string text = SiteExport.Of(SiteExport.First.Replace("\"Pump\"", "\"Pump ]]> & <b> -- and so on\"", StringComparison.Ordinal));
        Assert.Contains("]]>", text, StringComparison.Ordinal);
        Assert.Equal(Tokens(text), Tokens(ExchangeText.Of(ExchangeWriter.Write("a & b <", "A--", text))));
    }

    private static string[] Tokens(string text) => [.. Token().Matches(Comment().Replace(text, " ")).Select(match => match.Value)];

    [GeneratedRegex(@"\(\*.*?\*\)", RegexOptions.Singleline)]
    private static partial Regex Comment();

    [GeneratedRegex(@"\w+|:=|=>|<=|>=|<>|\.\.|\S")]
    private static partial Regex Token();
}
