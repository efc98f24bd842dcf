using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using Sequencer.Control.Traces;
using Sequencer.Export.Equivalence;
using Sequencer.Export.Tests.Equivalence;
using Sequencer.Proof;
using Sequencer.Proof.Reaching;
using Sequencer.Testing;
using Sequencer.Text;

namespace Sequencer.Export.Tests.Mutants;

/// <summary>
/// Single changes of the text of a site's unit: each is found by a run that differs and replays, or proved equal. The
/// table says which; the suite tries a few, <c>tests/full text-mutants</c> all.
/// </summary>
public sealed class TextMutantTests
{
    private const string Table = "text-mutants-one-pit.verified.txt";
    private const int MostOfAKind = 18;
    private const int SampleStep = 24;

    /// <summary>A text of one unit is proved equal with a small part of it.</summary>
    private const int MostConflicts = 20_000;

    private const string Different = "different";
    private const string Equal = "equal";
    private const string Undecided = "undecided";
    private const string Refused = "refused by the reader";

    private static readonly Lazy<DemoExport> Site = new(() => new DemoExport("one-pit", "pit.seq"));

    /// <summary>Runs to the steps and transitions of the procedure.</summary>
    private static readonly Lazy<Trace[]> Ways = new(() =>
    [
        .. GoalProver.DecideAll(Site.Value.System, Site.Value.System.Goals, ProofOptions.Default, null, null, CancellationToken.None)
            .OfType<Reached>().Select(reached => reached.Way),
    ]);

    /// <summary>All of them, or with the value <c>undecided</c> again those that the table calls so; the others keep what it says.</summary>
    private static readonly string? Wanted = Environment.GetEnvironmentVariable("SEQUENCER_ALL_TEXT_MUTANTS");

    [Fact]
    public void Each_mutant_is_found_or_proved_equal_as_the_table_says()
    {
        DemoExport site = Site.Value;
        ImmutableArray<TextMutant> mutants = TextMutants.Of(site.Export.Text, site.Block.FunctionBlock, MostOfAKind);
        string[] accepted = GoldenFile.Accepted(Table).Split('\n');
        if (Wanted is not null)
        {
            string[] verdicts = [.. mutants.Select(mutant => new[] { Different, Equal, Refused }.FirstOrDefault(verdict => Wanted == Undecided && accepted.Contains(Line(mutant, verdict))) ?? Undecided)];
            int[] open = [.. Enumerable.Range(0, mutants.Length).Where(index => verdicts[index] == Undecided)];
            Parallel.ForEach(open, new ParallelOptions { MaxDegreeOfParallelism = 2 }, index => verdicts[index] = Judge(site, mutants[index]));
            GoldenFile.Matches(Write(mutants, verdicts), Table);
            return;
        }

        foreach (TextMutant mutant in mutants.Where((_, index) => index % SampleStep == 0).Where(mutant => !accepted.Contains(Line(mutant, Undecided))))
        {
            Assert.Contains(Line(mutant, Judge(site, mutant)), accepted);
        }
    }

    private static string Judge(DemoExport site, TextMutant mutant)
    {
        ReadText read = TextComparison.Read(site.System, site.Export, new SourceText("mutant.st", mutant.Text), CancellationToken.None);
        if (read.Systems.IsEmpty)
        {
            return Refused;
        }

        EqualityResult result = TextComparison.Decide(site.System, site.Export, read, ProofOptions.Default with { Conflicts = MostConflicts }, () => Ways.Value, CancellationToken.None).Results[0];
        if (result is ProvedDifferent different)
        {
            Replay(site, different.Difference, mutant);
            return Different;
        }

        return result is ProvedEqual ? Equal : Undecided;
    }

    /// <summary>A difference without a run that shows it is none. Alarms are not among what a replay looks at.</summary>
    private static void Replay(DemoExport site, LockstepDifference found, TextMutant mutant)
    {
        Assert.True(found.Inputs.Scans >= found.Scan && found.ReferenceValue != found.OtherValue, $"{mutant.Name}: {found} is no difference");
        if (!found.Reference.Contains("alarm", StringComparison.Ordinal))
        {
            ReadBackResult again = ReadBack.Replay(site.System, site.Export with { Text = mutant.Text }, found.Inputs, CancellationToken.None);
            Assert.True(again.Difference is not null && again.Difference.Scan <= found.Scan, $"{mutant.Name}: {found} does not replay");
        }
    }

    private static string Line(TextMutant mutant, string verdict) => $"  {verdict}: {mutant.Name}";

    private static string Write(ImmutableArray<TextMutant> mutants, string[] verdicts)
    {
        StringBuilder text = new();
        string[] order = [Different, Equal, Undecided, Refused];
        text.Append(CultureInfo.InvariantCulture, $"{mutants.Length} single changes of the text of one-pit: ");
        text.Append(string.Join(", ", order.Select(verdict => string.Create(CultureInfo.InvariantCulture, $"{verdict} {verdicts.Count(one => one == verdict)}")))).Append('\n');
        foreach (IGrouping<string, (TextMutant Mutant, string Verdict)> kind in mutants.Zip(verdicts).GroupBy(pair => pair.First.Operator))
        {
            text.Append(CultureInfo.InvariantCulture, $"\n{kind.Key}\n");
            foreach ((TextMutant mutant, string verdict) in kind)
            {
                text.Append(Line(mutant, verdict)).Append('\n');
            }
        }

        return text.ToString();
    }
}
