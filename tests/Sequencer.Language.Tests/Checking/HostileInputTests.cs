using System.Collections.Immutable;
using System.Text;
using CsCheck;
using Sequencer.Language.Checking;
using Sequencer.Language.Parsing;
using Sequencer.Testing;
using Sequencer.Text;

namespace Sequencer.Language.Tests.Checking;

public sealed class HostileInputTests
{
    private const int Scan = 100;

    [Fact]
    public void Noise_below_the_size_limit_ends_in_a_bounded_number_of_diagnostics()
    {
        ImmutableArray<Diagnostic> found = ProgramChecker.Check(SamplePrograms.Source(Noise(10 * 1024 * 1024)), Scan).Diagnostics;
        Assert.InRange(found.Length, 2, ProgramLimits.MalformedLines + 1);
        Assert.Contains(found, diagnostic => diagnostic.Code == "SEQ0112");
    }

    [Fact]
    public void A_file_beyond_the_size_limit_is_not_read()
    {
        CheckResult result = ProgramChecker.Check(SamplePrograms.Source(new string('x', ProgramLimits.FileBytes + 1)), Scan);
        Assert.Equal("SEQ0101", Assert.Single(result.Diagnostics).Code);
        Assert.Null(result.Program);
    }

    [Theory]
    [InlineData("(")]
    [InlineData("alarm A1 \"x\" when (\n")]
    [InlineData("not ")]
    [InlineData("\"")]
    [InlineData("--|")]
    [InlineData("1e999 ")]
    [InlineData("\0")]
    [InlineData(",\n")]
    [InlineData("unit ")]
    [InlineData("\ud800")]
    [InlineData("input LT1 0 .. 6.000 m3 at %IW0 \"x\" usable only while LT1 > 1.000 m3\n")]
    public void The_same_thing_20000_times_is_answered(string part)
    {
        SourceText text = SamplePrograms.Source("language 1\n" + string.Concat(Enumerable.Repeat(part, 20_000)));
        AllInside(text, ProgramChecker.Check(text, Scan).Diagnostics);
    }

    [Fact]
    public void The_deepest_condition_allowed_is_safe_on_a_small_stack()
    {
        string open = string.Concat(Enumerable.Repeat("not rising (YS1 and ", 64));
        string line = $"alarm A1 \"Level high\" when {open}LT1 > 5.000 m3 stays 2 s{new string(')', 64)}";
        SourceText text = MarkedProgram.Replacing("alarm A1", line).Text;
        ImmutableArray<Diagnostic> found = [];
        Thread thread = new(() => found = ProgramChecker.Check(text, Scan).Diagnostics, 512 * 1024);
        thread.Start();
        thread.Join();
        Assert.DoesNotContain(found, diagnostic => diagnostic.Severity == Severity.Error && string.CompareOrdinal(diagnostic.Code, "SEQ0400") < 0);
    }

    [Fact]
    public void A_chain_of_20000_declarations_is_answered()
    {
        StringBuilder text = new("language 1\nunit R1 \"Tank\"\n");
        for (int index = 0; index < 20_000; index++)
        {
            text.Append(System.Globalization.CultureInfo.InvariantCulture, $"input L{index} 0 .. 10.0 m3 at %IW{index} \"x\" usable only while L{index + 1} usable\n");
        }

        Assert.Contains(ProgramChecker.Check(SamplePrograms.Source(text.ToString()), Scan).Diagnostics, diagnostic => diagnostic.Code == "SEQ0209");
    }

    [Fact]
    public void Randomly_changed_programs_are_always_answered_inside_the_file()
    {
        ParseCache cache = new();
        Gen.Select(Gen.Int[0, SamplePrograms.Full.Length - 1], Gen.Char[" \n\"()-%.,<>=0aZ\u00b5\0_/"], Gen.Int[0, 3]).Array[1, 6].SampleRepeatably(
            changes =>
            {
                StringBuilder text = new(SamplePrograms.Full);
                foreach ((int place, char character, int kind) in changes)
                {
                    Change(text, Math.Min(place, text.Length - 1), character, kind);
                }

                SourceText source = SamplePrograms.Source(text.ToString());
                AllInside(source, ProgramChecker.Check(source, Scan, cache).Diagnostics);
            },
            iterations: 400);
    }

    private static void Change(StringBuilder text, int place, char character, int kind)
    {
        switch (kind)
        {
            case 0:
                text.Remove(place, 1);
                break;
            case 1:
                text.Insert(place, character);
                break;
            case 2:
                text[place] = character;
                break;
            default:
                text.Remove(place, Math.Min(12, text.Length - place));
                break;
        }
    }

    private static void AllInside(SourceText text, ImmutableArray<Diagnostic> found)
    {
        Assert.NotEmpty(text.Content);
        foreach (Diagnostic diagnostic in found)
        {
            Assert.InRange(diagnostic.Span.Span.Start, 0, text.Content.Length);
            Assert.InRange(diagnostic.Span.Span.End, 0, text.Content.Length);
            Assert.NotEmpty(DiagnosticRenderer.Render(diagnostic));
        }
    }

    private static string Noise(int length)
    {
        Random random = new(20_260_101);
        return string.Create(length, random, (characters, source) =>
        {
            for (int index = 0; index < characters.Length; index++)
            {
                characters[index] = (char)source.Next(1, 127);
            }
        });
    }
}
