using System.Text.RegularExpressions;
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
        string text = ExportStage.Write(site).Text;
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

    [GeneratedRegex(@"\w+|[^\w\s]+")]
    private static partial Regex Word();
}
