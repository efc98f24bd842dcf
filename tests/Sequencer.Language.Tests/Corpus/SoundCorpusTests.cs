using Sequencer.Language.Checking;
using Sequencer.Language.Formatting;
using Sequencer.Text;

namespace Sequencer.Language.Tests.Corpus;

/// <summary>Programs of <c>Corpus/Sound</c>: unusual, and without a mistake.</summary>
public sealed class SoundCorpusTests
{
    private const int ScanMilliseconds = 100;

    public static TheoryData<string> Names => [.. FaultyProgram.Files("Sound").Select(file => Path.GetFileNameWithoutExtension(file))];

    [Fact]
    public void The_corpus_holds_at_least_60_sound_programs_and_no_two_alike()
    {
        string[] contents = [.. FaultyProgram.Files("Sound").Select(File.ReadAllText)];

        Assert.True(contents.Length >= 60, $"{contents.Length} sound programs");
        Assert.Equal(contents.Length, contents.Distinct().Count());
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Nothing_is_told_of_it_as_written_with_other_line_ends_and_formatted(string name)
    {
        string path = FaultyProgram.Files("Sound").Single(file => Path.GetFileNameWithoutExtension(file) == name);
        SourceText source = new(name + ".seq", File.ReadAllText(path));

        SaysNothing(source);
        SaysNothing(new SourceText(name + ".seq", source.Content.Replace("\n", "\r\n", StringComparison.Ordinal)));
        FormatResult formatted = ProgramFormatter.Format(source);
        Assert.NotNull(formatted.Text);
        SaysNothing(new SourceText(name + ".seq", formatted.Text));
    }

    private static void SaysNothing(SourceText source)
    {
        CheckResult result = ProgramChecker.Check(source, ScanMilliseconds);
        Assert.True(result.Program is not null && result.Diagnostics.IsEmpty, DiagnosticRenderer.Render(result.Diagnostics));
    }
}
