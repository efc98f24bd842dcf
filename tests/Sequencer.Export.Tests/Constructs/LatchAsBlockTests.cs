using System.Diagnostics;
using System.Text.RegularExpressions;
using Sequencer.Export.Equivalence;
using Sequencer.Export.Tests.Equivalence;
using Sequencer.Export.Writing;
using Sequencer.Proof;
using Xunit.Abstractions;

namespace Sequencer.Export.Tests.Constructs;

/// <summary>
/// A latch is written as IF and ELSIF on a BOOL. As an instance of SR it means the same; what is gained and lost is in
/// spec/structured-text.md.
/// </summary>
public sealed partial class LatchAsBlockTests(ITestOutputHelper report)
{
    [Theory]
    [InlineData("one-pit", "pit.seq")]
    [InlineData("marlpit-wharf", "reaction.seq")]
    public void Latches_as_instances_of_SR_are_proved_equal_too(string folder, string file)
    {
        DemoExport site = new(folder, file);
        string[] latches = [.. Latch().Matches(site.Export.Text).Select(match => match.Groups["latch"].Value)];
        string text = Latch().Replace(site.Export.Text, "${latch}(S1 := ${set}, R := ${reset});");
        foreach (string latch in latches)
        {
            text = Regex.Replace(text, $@"\b{latch}( *): BOOL := FALSE;", $"{latch}$1: SR;");
            text = Regex.Replace(text, $@"\b{latch}\b(?!\(| *: SR)", $"{latch}.Q1");
        }

        Assert.InRange(latches.Length, 4, 100);
        ExportedBlock block = site.Block with
        {
            Variables = [.. site.Block.Variables.Select(variable => latches.Contains(variable.Name) ? variable with { Name = variable.Name + ".Q1" } : variable)],
        };
        double before = Seconds(() => Assert.IsType<ProvedEqual>(site.Decide(site.Export.Text, ProofOptions.Default)));
        double after = Seconds(() => Assert.IsType<ProvedEqual>(TextEquality.Decide(
            site.System, site.Read(text) ?? throw new InvalidOperationException("the text cannot be read"), block, ProofOptions.Default, CancellationToken.None)));
        report.WriteLine(FormattableString.Invariant(
            $"{file}: {latches.Length} latches; {Lines(site.Export.Text)} lines, {Lines(text)} with SR; proved in {before:0.0} s, with SR in {after:0.0} s"));
    }

    private static int Lines(string text) => text.Count(letter => letter == '\n');

    private static double Seconds(Action work)
    {
        Stopwatch watch = Stopwatch.StartNew();
        work();
        return watch.Elapsed.TotalSeconds;
    }

    [GeneratedRegex(@"IF (?<set>.+) THEN\n +(?<latch>\w+_(Latched|Discrepancy)) := TRUE;\n *ELSIF (?<reset>.+) THEN\n +\k<latch> := FALSE;\n *END_IF;")]
    private static partial Regex Latch();
}
