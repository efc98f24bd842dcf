using System.Collections.Immutable;
using Sequencer.Control.TransitionSystems;
using Sequencer.Export.Equivalence;
using Sequencer.Export.Writing;
using Sequencer.Language.Checking;
using Sequencer.Language.Programs;
using Sequencer.Lowering;
using Sequencer.Proof;
using Sequencer.Testing;
using Sequencer.Text;

namespace Sequencer.Export.Tests.Equivalence;

/// <summary>Claims on shared equipment: the queue and what each unit does with it, as text and as program; and what they owe is proved.</summary>
public sealed class ClaimsTogetherTests
{
    private const int ScanMilliseconds = 100;
    [Theory]
    [InlineData(2)]
    [InlineData(3)]
    public void Claims_are_proved_equal_to_the_programs(int units)
    {
        (TransitionSystem system, StructuredTextExport export) = Write(units);
        ReadBackResult read = ReadBack.Run(system, export, 5_000, 1, CancellationToken.None);
        Assert.True(read.Agrees, $"{read.Difference} {string.Join('\n', read.Diagnostics.Select(diagnostic => diagnostic.Message))}");

        ImmutableArray<EqualityResult> results = TextEquality.DecideAll(system, export, read.Systems, ProofOptions.Default, CancellationToken.None);

        EqualityResult result = Assert.Single(results);
        ProvedEqual? proved = result as ProvedEqual;
        Assert.True(proved is not null, $"{result}");
        Assert.True(proved.Compared >= system.Outputs.Length + system.Alarms.Length, $"only {proved.Compared} are compared");
        Assert.All([SmtSolver.Z3, SmtSolver.Cvc5], solver => solver.Discharge(proved.Certificate));
    }

    /// <summary>A text whose queue or whose demands are wired wrongly must not pass.</summary>
    [Theory]
    [InlineData("A_SKID_B_Claims := B.", "A_SKID_B_Claims := NOT B.")]
    [InlineData("B_PS_Asks_On_Shown := B.Shown_PS_Asks_On;", "B_PS_Asks_On_Shown := TRUE;")]
    [InlineData("THEN A_SKID_A_Ahead_Of_B := NOT", "THEN A_SKID_A_Ahead_Of_B :=")]
    public void A_changed_line_is_found(string line, string changed)
    {
        (TransitionSystem system, StructuredTextExport export) = Write(2);
        Assert.Contains(line, export.Text, StringComparison.Ordinal);
        StructuredTextExport altered = export with { Text = export.Text.Replace(line, changed, StringComparison.Ordinal) };

        ReadBackResult read = ReadBack.Run(system, altered, 20_000, 1, CancellationToken.None);

        Assert.False(read.Agrees && TextEquality.DecideAll(system, altered, read.Systems, ProofOptions.Default, CancellationToken.None).All(result => result is ProvedEqual));
    }

    [Theory]
    [InlineData("A.SKID.one_owner")]
    [InlineData("A.SKID.granted")]
    [InlineData("B.step10.claim1.ends")]
    [InlineData("C.step20.claim1.ends")]
    [InlineData("A.TURN.one_owner")]
    [InlineData("C.step20.claim2.ends")]
    public void What_claims_owe_is_proved(string requirement)
    {
        (TransitionSystem system, _) = Write(3);

        Verdict verdict = Prover.Decide(system, system.Requirements.Single(each => each.Name == requirement), ProofOptions.Default, null, CancellationToken.None);

        Assert.IsType<Holds>(verdict);
    }

    private static (TransitionSystem System, StructuredTextExport Export) Write(int units)
    {
        SiteCheckResult result = SiteChecker.Check(
            [.. Enumerable.Range(0, units).Select(unit => new SourceText($"unit{unit + 1}.seq", Unit((char)('A' + unit), units)))], ScanMilliseconds);
        Assert.True(result.Units.Length == units, DiagnosticRenderer.Render(result.Diagnostics));
        SiteProgram site = new("bench", ScanMilliseconds, result.Units);
        return (SiteLowering.Lower(site), StructuredTextWriter.Write(site, new ExportHeader("bench", "A", "none")));
    }

    /// <summary>Every way to use what is claimed: at once, for a time, until an end, released while held, passed over, in a branch that joins.</summary>
    private static string Unit(char letter, int units)
    {
        int place = letter - 'A';
        bool owner = place == 0;
        string prefix = owner ? "" : "A.";
        string shared = owner
            ? """
              output PS  motor  at %QX9.0  "Shared pump"   safe stopped
              output XS  valve  at %QX9.1  "Shared valve"  safe open
              shared SKID "Acid skid" PS, XS
              shared TURN "Whose turn it is"
              interlock I1 "Not when low" PS blocked while LTA < 0.050 m3
              """
            : "";
        return $"""
            language 1
            unit {letter} "Bench unit"
            input  LT{letter}  0 .. 1.000 m3  at %IW{place}  "Level"  bad after 0.3 s
            input  S{letter}  switch  at %IX{place}.0  "Ready"
            output M{letter}  motor  at %QX{place}.0  "Motor"  safe stopped
            {shared}
            alarm A9 "Skid is out of reach" when {prefix}SKID taken and not {prefix}SKID granted
            procedure
              step 10 "One"
                claim {prefix}SKID limit 2 s then {(place == 1 ? "stop" : "hold")} "Skid is busy"{(place == units - 1 ? ", released while held" : "")}
                run {prefix}PS for 1 s
                close {prefix}XS until LT{letter} > 0.500 m3
                run M{letter} while not {prefix}SKID granted
                limit 1 h then hold "Too long"
                go 20 when LT{letter} > 0.200 m3 stays 1 s
              step 20 "Two" only if S{letter}
                claim {prefix}SKID limit 1 s then abort "Skid is busy"
                claim {prefix}TURN limit 1 h then stop "Not our turn"
                run {prefix}PS after 0.5 s while LT{letter} > 0.100 m3
                limit 1 h then hold "Too long"
                go finish when S{letter} stays 1 s

            """;
    }
}
