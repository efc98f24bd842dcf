using System.Text.RegularExpressions;
using Sequencer.Export.Writing;
using Sequencer.Sites.Folders;
using Sequencer.Sites.Stages;
using Sequencer.StructuredText;
using Sequencer.Testing;
using Sequencer.Text;

namespace Sequencer.Sites.Tests.ExportedText;

/// <summary>The exported text of each demo site as a reader finds it who knows nothing of where it comes from.</summary>
public sealed partial class ExportedTextTests
{
    private const int Damages = 1;

    [Theory]
    [InlineData("quillgate")]
    [InlineData("marlpit-wharf")]
    [InlineData("fernhollow")]
    [InlineData("sedgemere")]
    public void It_is_read_from_its_program_on_without_a_single_message_and_damaged_does_no_harm(string name)
    {
        LoadedSite site = SiteLoader.Load(new SiteFolder(RepositoryPath.Site(name)), new DiagnosticBag()) ?? throw new InvalidOperationException("the site does not check");
        string text = ExportStage.Write(site, TextDialect.Default).Text;
        ReadingResult whole = Read(text);
        Assert.True(whole.Diagnostics.IsEmpty, DiagnosticRenderer.Render(whole.Diagnostics));
        Assert.NotNull(whole.System);

        Random random = new(61131);
        Match[] words = [.. Word().Matches(text).OfType<Match>()];
        for (int turn = 0; turn < Damages; turn++)
        {
            ReadingResult result = Read(Damaged(text, words, random));
            Assert.True(result.System is not null || !result.Diagnostics.IsEmpty);
        }
    }

    /// <summary>
    /// What the second edition of IEC 61131-3 has not, from memory: words of the third, other comments than (* *), conversions without a source type. And no
    /// number but whole ones.
    /// </summary>
    [Theory]
    [InlineData("quillgate")]
    [InlineData("marlpit-wharf")]
    [InlineData("fernhollow")]
    [InlineData("sedgemere")]
    public void Nothing_in_it_is_of_the_third_edition_alone(string name)
    {
        LoadedSite site = SiteLoader.Load(new SiteFolder(RepositoryPath.Site(name)), new DiagnosticBag()) ?? throw new InvalidOperationException("the site does not check");
        string text = BracketComment().Replace(ExportStage.Write(site, TextDialect.Default with { Edition = TextEdition.Second }).Text, " ");
        string[] tokens = [.. Token().Matches(text).Select(match => match.Value)];
        string[] newer =
        [
            "ABSTRACT", "CLASS", "EXTENDS", "FINAL", "IMPLEMENTS", "INTERFACE", "INTERNAL", "METHOD", "NAMESPACE", "NULL", "OVERLAP", "OVERRIDE", "PRIVATE", "PROTECTED",
            "PUBLIC", "REF", "REF_TO", "SUPER", "THIS", "USING", "CONTINUE", "LTIME", "LDATE", "LTOD", "LDT", "CHAR", "WCHAR", "REAL", "LREAL", "//", "/*", "{", "?=",
        ];
        Assert.Empty(tokens.Intersect(newer, StringComparer.OrdinalIgnoreCase));
        Assert.DoesNotMatch(@"\d\.\d", AddressOrDuration().Replace(text, " "));
        Assert.Empty(Conversion().Matches(text).Select(match => match.Groups[1].Value).Except(["INT_TO_DINT", "DINT_TO_INT"]));
        Assert.Single(tokens, "VAR_GLOBAL");

        // An INT is given to a DINT by a conversion alone: loop currents are the only INT, and they meet only each other and literals.
        Assert.All(Assignment().Matches(text).Select(match => (To: match.Groups[1].Value, From: match.Groups[2].Value)).Where(pair => pair.From.StartsWith("AI_", StringComparison.Ordinal)),
            pair => Assert.Equal("Microamperes", pair.To));
    }

    private static ReadingResult Read(string text) => StructuredTextReader.Read(new SourceText("site.st", text), new ReadingOptions());

    /// <summary>A few words left out, written twice, or put in the place of others.</summary>
    private static string Damaged(string text, Match[] words, Random random)
    {
        foreach (Match word in Enumerable.Range(0, 4).Select(_ => words[random.Next(words.Length)]).DistinctBy(word => word.Index).OrderByDescending(word => word.Index))
        {
            string instead = random.Next(3) switch { 0 => "", 1 => $"{word.Value} {word.Value}", _ => words[random.Next(words.Length)].Value };
            text = text.Remove(word.Index, word.Length).Insert(word.Index, instead);
        }

        return text;
    }

    [GeneratedRegex(@"\(\*.*?\*\)", RegexOptions.Singleline)]
    private static partial Regex BracketComment();

    [GeneratedRegex(@"%\w+[0-9.]*|T#[0-9a-z_.]+|\d+\.\.\d+")]
    private static partial Regex AddressOrDuration();

    [GeneratedRegex(@"\w+|//|/\*|\?=|[^\w\s]")]
    private static partial Regex Token();

    [GeneratedRegex(@"\b(\w*TO_\w+)\(")]
    private static partial Regex Conversion();

    [GeneratedRegex(@"(\w+) := (\w+)")]
    private static partial Regex Assignment();

    [GeneratedRegex(@"\w+|[^\w\s]+")]
    private static partial Regex Word();
}
