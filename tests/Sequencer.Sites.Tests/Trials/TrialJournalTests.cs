using Sequencer.Simulation.Trials;
using Sequencer.Sites.Folders;
using Sequencer.Sites.Trials;

namespace Sequencer.Sites.Tests.Trials;

/// <summary>Whatever a kill has left of the journal, what is whole in it counts, to the last bit.</summary>
public sealed class TrialJournalTests : IDisposable
{
    private const string Identity = "0123";

    private readonly string _folder = Directory.CreateTempSubdirectory("journal-").FullName;

    private string Journal => Path.Combine(_folder, TrialJournal.FolderName, "runs.txt");

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void A_journal_cut_off_anywhere_is_gone_on_with()
    {
        Keep(1, 2);
        byte[] whole = File.ReadAllBytes(Journal);
        string[] lines = File.ReadAllLines(Journal);
        for (int length = 0; length <= whole.Length; length++)
        {
            File.WriteAllBytes(Journal, whole[..length]);
            int ends = whole[..length].Count(letter => letter == '\n');
            Assert.InRange(TrialJournal.Read(_folder, Identity).Count, Math.Max(0, ends - 1), 2);
            Keep(7);
            Assert.Equal(lines.Take(Math.Max(1, ends)).Append(SummaryLine.Write(7, Summary(7))), File.ReadAllLines(Journal));
        }
    }

    [Fact]
    public void Every_number_comes_back_to_the_last_bit()
    {
        RunSummary summary = Summary(3);
        (int run, RunSummary read) = SummaryLine.Read(SummaryLine.Write(3, summary)) ?? throw new InvalidOperationException("the line was not whole");
        Assert.Equal(3, run);
        Assert.Equal(summary.Values.Select(BitConverter.DoubleToInt64Bits), read.Values.Select(BitConverter.DoubleToInt64Bits));
        Assert.Equal(SummaryLine.Write(3, summary), SummaryLine.Write(3, read));
        Assert.Equal(summary with { Values = [], Overflowed = [], Expectations = [] }, read with { Values = [], Overflowed = [], Expectations = [] });
        RunSummary nothing = RunSummary.NotPlayable(new TrialMeasures([], [], [], [], 0));
        Assert.Equal(SummaryLine.Write(4, nothing), SummaryLine.Write(4, SummaryLine.Read(SummaryLine.Write(4, nothing))?.Summary ?? Summary(4)));
    }

    [Fact]
    public void A_line_with_one_letter_changed_counts_for_nothing()
    {
        string line = SummaryLine.Write(3, Summary(3));
        for (int place = 0; place < line.Length; place++)
        {
            Assert.Null(SummaryLine.Read(string.Concat(line.AsSpan(0, place), line[place] == '8' ? "9" : "8", line.AsSpan(place + 1))));
        }
    }

    [Fact]
    public void A_journal_of_another_set_or_of_something_else_is_refused_and_left()
    {
        Keep(1);
        Assert.Contains("another trial set", Assert.Throws<OutputRefusedException>(() => TrialJournal.Read(_folder, "4567")).Message, StringComparison.Ordinal);
        File.WriteAllText(Journal, "my notes\n");
        Assert.Contains("no journal of ours", Assert.Throws<OutputRefusedException>(() => TrialJournal.Read(_folder, Identity)).Message, StringComparison.Ordinal);
        Assert.Throws<OutputRefusedException>(() => TrialJournal.Open(_folder, null, Identity));
        Assert.Equal("my notes\n", File.ReadAllText(Journal));
    }

    [Fact]
    public void Two_at_a_time_are_refused()
    {
        using TrialJournal first = TrialJournal.Open(_folder, null, Identity);
        Assert.Contains("at work in another process", Assert.Throws<OutputRefusedException>(() => TrialJournal.Open(_folder, null, Identity)).Message, StringComparison.Ordinal);
    }

    private void Keep(params int[] runs)
    {
        using TrialJournal journal = TrialJournal.Open(_folder, null, Identity);
        foreach (int run in runs)
        {
            journal.Add(run, Summary(run));
        }
    }

    private static RunSummary Summary(int run) => new(
        RunEndKind.Came,
        10_000 + (0.1 * run),
        double.NaN,
        [1.0 / 3.0, double.NaN, -0.0, double.Epsilon, double.MaxValue],
        [0, 12.5],
        1.0 / 7.0,
        [true, false],
        new Happening("TK301.T1", 0.1 + 0.2),
        null,
        17,
        null,
        new Overdose("P304", 1e-7),
        "TK301 Held, TK302 Running",
        true,
        "",
        3e-15,
        run == 2 ? "TK301: balance of volume: gone (at 7.0 s)" : "");
}
