using System.Collections.Immutable;
using CsCheck;
using Sequencer.Language.Formatting;
using Sequencer.Language.Parsing;
using Sequencer.Language.Tests.Checking;
using Sequencer.Language.Tests.Modules;
using Sequencer.Testing;
using Sequencer.Text;

namespace Sequencer.Language.Tests.Formatting;

public sealed class ProgramFormatterTests
{
    /// <summary>Every statement on one line, and no comment.</summary>
    private static readonly string Plain = string.Join('\n', SamplePrograms.Full.Split('\n').Where(line => !line.Contains("--|", StringComparison.Ordinal)))
        .Replace(",\n ", ", ", StringComparison.Ordinal);

    public static TheoryData<string> Programs =>
    [
        .. Directory.EnumerateFiles(RepositoryPath.At("sequences"), "*.seq*", SearchOption.AllDirectories)
            .Append(RepositoryPath.At("src", "Sequencer.Sites", "Template", "program.seq"))
            .Select(path => Path.GetRelativePath(RepositoryPath.Root, path)).Order(StringComparer.Ordinal),
    ];

    [Theory]
    [MemberData(nameof(Programs))]
    public void Every_program_of_the_repository_is_laid_out(string path)
    {
        string text = File.ReadAllText(RepositoryPath.At(path));
        Assert.True(Formatted(text) == text, $"run `sequencer format` on {path}");
    }

    /// <summary>The fenced blocks of spec/modules.md, a library and a program.</summary>
    public static TheoryData<string> ModuleBlocks =>
        [.. File.ReadAllText(RepositoryPath.At("spec", "modules.md")).Split("```seq").Skip(1).Select(block => block[(block.IndexOf('\n', StringComparison.Ordinal) + 1)..block.IndexOf("```", StringComparison.Ordinal)])];

    [Theory]
    [MemberData(nameof(ModuleBlocks))]
    public void Libraries_and_equipment_are_laid_out_in_the_specification(string text) => Assert.Equal(text, Formatted(text));

    [Fact]
    public void A_library_and_its_equipment_have_their_place()
    {
        Assert.Equal(ModuleProgram.Library, Formatted(ModuleProgram.Library));
        Assert.Equal(ModuleProgram.Program, Formatted(ModuleProgram.Program));
    }

    [Fact]
    public void The_program_of_the_language_is_laid_out() => Assert.Equal(SamplePrograms.Rinse, Formatted(SamplePrograms.Rinse));

    [Fact]
    public void Every_statement_has_its_place() => GoldenFile.Matches(Formatted(SamplePrograms.Full), "full.verified.seq");

    [Fact]
    public void Comments_stay_where_they_are() => GoldenFile.Matches(
        Formatted("""


            -- first
            language 1
            unit  R1   "Tank" -- its name


            --|  Two
            --|  lines
            alarm A1 "Short" when YS1 --| of the next one
            -- between
            alarm A2222 "Longer"   when YS1 and
              -- inside
              not YS2
            -- at the end of the declarations

            procedure
              -- of the procedure
            step 10 "Fill"
            -- of the line below
            open XV1
            -- of the line above

            -- alone
            --| of the step
            step 20 "Wait"
            go 30 when (A
              ) -- the end
            -- last
            """),
        "comments.verified.seq");

    [Theory]
    [InlineData("input TT1 -20 .. 60 degC at %IW0 \"T\"", "input TT1   -20..60 degC at %IW0 \"T\"")]
    [InlineData("parameter p = -5 degC from -10 degC to 5 degC", "parameter p=-5 degC from - 10 degC to 5 degC")]
    [InlineData("alarm A1 \"x\" when A - 0.30 > -5 and (B + 1) - 2 < 3", "alarm A1 \"x\" when A -0.30>- 5 and ( B+1 )-2<3")]
    [InlineData("alarm A1 \"x\" when P1.total > 5 L", "alarm A1 \"x\" when P1 . total>5 L")]
    [InlineData("alarm A1 \"x\" when not (A or B) and C", "alarm A1 \"x\" when not(A or B)and C")]
    [InlineData("reagent A opposes B, C", "reagent A opposes B ,C")]
    public void Signs_and_brackets_are_set_in_one_way(string expected, string written) => Assert.Equal(expected + "\n", Formatted(written));

    [Fact]
    public void A_broken_statement_is_joined_where_it_fits_and_keeps_its_breaks_where_not()
    {
        string words = string.Join(" and\n ", Enumerable.Repeat("a_signal_with_a_name", 8));
        Assert.Equal("alarm A1 \"x\" when A and B\n", Formatted("alarm A1 \"x\" when A and\n\n  B"));
        Assert.Equal($"alarm A1 \"x\" when {words.Replace("\n ", "\n    ", StringComparison.Ordinal)}\n", Formatted($"alarm A1 \"x\" when {words}"));
        string one = words.Replace("\n", "", StringComparison.Ordinal);
        Assert.Equal($"alarm A1 \"x\" when {one}\n", Formatted($"alarm A1 \"x\" when {one}"));
    }

    [Fact]
    public void A_file_with_mistakes_is_refused_with_them()
    {
        FormatResult result = ProgramFormatter.Format(SamplePrograms.Source("language 1\nopne XV1\nlimit 5 min then hold \"x\n"));
        Assert.Null(result.Text);
        Assert.Equal(["SEQ0111", "SEQ0104"], result.Diagnostics.Select(diagnostic => diagnostic.Code));
    }

    [Theory]
    [InlineData("")]
    [InlineData("\n\n")]
    [InlineData("-- only a comment")]
    public void A_file_without_statements_is_laid_out(string text) => Assert.Equal(text.Trim().Length == 0 ? "" : text + "\n", Formatted(text));

    [Fact]
    public void A_statement_that_would_grow_beyond_the_limit_is_left_as_written()
    {
        string listed = "interlock I1 \"x\" " + string.Join(',', Enumerable.Repeat("X", 3_900)) + " blocked while A";
        Assert.True(listed.Length < ProgramLimits.LineCharacters);
        Assert.Equal(listed + "\n", Formatted(listed));
    }

    [Fact]
    public void Other_blanks_give_the_same_text() => SpoiltLayout.Of(Plain, breaks: false, comments: false).SampleRepeatably(
        spoilt => Assert.Equal(Formatted(Plain), Formatted(spoilt)), iterations: 20);

    [Theory]
    [InlineData(SamplePrograms.Full)]
    [InlineData(ModuleProgram.Library)]
    [InlineData(ModuleProgram.Program)]
    public void A_spoilt_layout_is_laid_out_once_and_for_all(string text) => SpoiltLayout.Of(text, breaks: true, comments: true).SampleRepeatably(
        spoilt =>
        {
            string once = Formatted(spoilt);
            Assert.Equal(once, Formatted(once));
            Assert.Equal(Comments(spoilt), Comments(once));
            Assert.Equal(Tokens(text), Tokens(once));
            Assert.Equal(Documentation(spoilt), Documentation(once));
        },
        iterations: 30);

    private static string Formatted(string text)
    {
        FormatResult result = ProgramFormatter.Format(SamplePrograms.Source(text));
        Assert.True(result.Text is not null, DiagnosticRenderer.Render(result.Diagnostics));
        return result.Text;
    }

    private static List<string> Comments(string text) =>
        [.. SamplePrograms.Source(text).Content.Split('\n').Where(line => line.Contains("--", StringComparison.Ordinal)).Select(line => line[line.IndexOf("--", StringComparison.Ordinal)..].TrimEnd())];

    private static List<string> Tokens(string text) =>
        [.. Lines(text).SelectMany(line => new Tokenizer(SamplePrograms.Source(text).Content.Substring(line.Span.Start, line.Span.Length)).Read().Select(token => token.Text).Append("\n"))];

    private static List<string> Documentation(string text) => [.. Lines(text).Select(line => line.Documentation)];

    private static ImmutableArray<LogicalLine> Lines(string text)
    {
        LogicalLineReader reader = new(SamplePrograms.Source(text).Content);
        ImmutableArray<LogicalLine>.Builder lines = ImmutableArray.CreateBuilder<LogicalLine>();
        for (LogicalLine? line = reader.Next(); line is not null; line = reader.Next())
        {
            lines.Add(line);
        }

        return lines.ToImmutable();
    }
}
