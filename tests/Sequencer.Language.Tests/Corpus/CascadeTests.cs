using System.Collections.Immutable;
using Sequencer.Language.Checking;
using Sequencer.Language.Parsing;
using Sequencer.Text;

namespace Sequencer.Language.Tests.Corpus;

/// <summary>A second mistake beside the first: a line of a faulty program is lost or written twice.</summary>
public sealed class CascadeTests
{
    private const int ScanMilliseconds = 100;
    private const int Seed = 20_260_301;
    private const int TriesEach = 4;

    /// <summary>Mistakes of one lost or doubled line: what it declared is missed wherever it is named.</summary>
    private const int MostMessages = 16;

    [Fact]
    public void A_line_lost_or_written_twice_ends_in_a_bounded_number_of_messages_each_with_its_place()
    {
        Random random = new(Seed);
        int checks = 0;
        foreach (FaultyProgram program in FaultyProgram.All.Where(program => GoodLines(program.Source.Content.Split('\n')).Any()))
        {
            for (int turn = 0; turn < TriesEach; turn++)
            {
                SourceText spoilt = Spoil(program, random);
                ImmutableArray<Diagnostic> found = ProgramChecker.Check(spoilt, ScanMilliseconds, new ParseCache()).Diagnostics;

                string told = $"{program.Name}\n{spoilt.Content}\n{DiagnosticRenderer.Render(found)}";
                Assert.True(found.Length <= MostMessages, told);
                Assert.All(found, message => Assert.True(
                    message.Span.Source == spoilt && message.Span.Span.Start >= 0 && message.Span.Span.End <= spoilt.Content.Length
                    && (message.Span.Span.Length > 0 || message.Code is "SEQ0120" or "SEQ0126" or "SEQ0110")
                    && message.Message.Length > 0 && message.Reason.Length > 0 && message.Mend.Length > 0,
                    told));
                checks++;
            }
        }

        Assert.True(checks >= 600, $"{checks} programs were checked");
    }

    private static SourceText Spoil(FaultyProgram program, Random random)
    {
        List<string> lines = [.. program.Source.Content.Split('\n')];
        int[] good = [.. GoodLines(lines)];
        int chosen = good[random.Next(good.Length)];
        if (random.Next(2) == 0)
        {
            lines.RemoveAt(chosen);
        }
        else
        {
            lines.Insert(chosen, lines[chosen]);
        }

        return new SourceText(program.Source.Path, string.Join('\n', lines));
    }

    /// <summary>Neither comments nor the line above the mark.</summary>
    private static IEnumerable<int> GoodLines(IReadOnlyList<string> lines) => Enumerable.Range(0, lines.Count - 1)
        .Where(line => lines[line].Length > 0 && !IsComment(lines[line]) && !(IsComment(lines[line + 1]) && lines[line + 1].Contains(" SEQ", StringComparison.Ordinal)));

    private static bool IsComment(string line) => line.StartsWith("--", StringComparison.Ordinal);
}
