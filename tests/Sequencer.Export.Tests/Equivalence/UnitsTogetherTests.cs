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

/// <summary>Several units in one PROGRAM: their blocks and the wiring between them are read back as one system.</summary>
public sealed class UnitsTogetherTests
{
    private const int ScanMilliseconds = 100;
    /// <summary>Every kind of thing that one unit can see of another is named by the next one.</summary>
    private static string First(string last) => Unit("A", last, $"""
            parameter fill = 0.800 m3 from 0.500 m3 to 0.900 m3
            fact FULL "Tank is full" when LTA > fill
            latch WAS_FULL "Tank was full" set when LTA > 0.700 m3 clear when at step 10, retained
            trip T1 "Low" when LTA < 0.010 m3 stays 2 s then hold, if bad hold
            interlock I1 "Apart" XA blocked while {last}.M{last}
            interlock I2 "Not while the last one rests" MA blocked while {last} is Held or {last}.T1 latched
            """);

    private static string Second => Unit("B", "A", """
            trip T1 "Low" when LTB < 0.010 m3 or A.LTA > 0.950 m3 then stop
            interlock I1 "Only from a full tank" XB blocked unless A.FULL and A.LTA usable
            interlock I2 "Not twice" MB blocked while A.MA.total > 1 L or A.WAS_FULL
            """);

    private static string Third => Unit("C", "B", """
            trip T1 "Low" when LTC < 0.010 m3 and B.SB then hold
            latch SEEN "First was seen" set when A at step 20 clear when B is Complete
            interlock I1 "Apart" MC, XC blocked from B.MB failed until not B.SB and reset
            alarm L1 "Seen" when SEEN and not A.FULL
            """);

    [Theory]
    [InlineData(2)]
    [InlineData(3)]
    public void Units_and_their_wiring_are_proved_equal_to_the_programs(int units)
    {
        string[] programs = units == 3 ? [First("C"), Second, Third] : [Second, First("B")];
        (TransitionSystem system, StructuredTextExport export) = Write(programs);
        ReadBackResult read = ReadBack.Run(system, export, 3_000, 1, CancellationToken.None);
        Assert.True(read.Agrees, $"{read.Difference} {string.Join('\n', read.Diagnostics.Select(diagnostic => diagnostic.Message))}");

        ImmutableArray<EqualityResult> results = TextEquality.DecideAll(system, export, read.Systems, ProofOptions.Default, CancellationToken.None);

        EqualityResult result = Assert.Single(results);
        ProvedEqual? proved = result as ProvedEqual;
        Assert.True(proved is not null, $"{result}");
        Assert.True(proved.Compared >= system.Outputs.Length + system.Alarms.Length, $"only {proved.Compared} are compared");
        Assert.All([SmtSolver.Z3, SmtSolver.Cvc5], solver => solver.Discharge(proved.Certificate));
    }

    /// <summary>A text whose units see each other wrongly must not pass.</summary>
    [Theory]
    [InlineData("B_LTB_Shown := B.Shown_LTB;", "")]
    [InlineData("A_FULL := A_FULL_Shown", "A_FULL := NOT A_FULL_Shown")]
    public void A_changed_wire_is_found(string wire, string changed)
    {
        (TransitionSystem system, StructuredTextExport export) = Write(
            First("B"), Second);
        Assert.Contains(wire, export.Text, StringComparison.Ordinal);
        StructuredTextExport altered = export with { Text = export.Text.Replace(wire, changed, StringComparison.Ordinal) };

        ReadBackResult read = ReadBack.Run(system, altered, 20_000, 1, CancellationToken.None);

        Assert.False(read.Agrees && TextEquality.DecideAll(system, altered, read.Systems, ProofOptions.Default, CancellationToken.None).All(result => result is ProvedEqual));
    }

    private static (TransitionSystem System, StructuredTextExport Export) Write(params string[] programs)
    {
        SiteCheckResult result = SiteChecker.Check(
            [.. programs.Select((program, index) => new SourceText($"unit{index + 1}.seq", program))], ScanMilliseconds);
        Assert.True(result.Units.Length == programs.Length, DiagnosticRenderer.Render(result.Diagnostics));
        SiteProgram site = new("bench", ScanMilliseconds, result.Units);
        return (SiteLowering.Lower(site), StructuredTextWriter.Write(site, new ExportHeader("bench", "A", "none")));
    }

    private static string Unit(string letter, string before, string declarations)
    {
        int place = letter[0] - 'A';
        return $"""
            language 1
            unit {letter} "Bench unit"
            input  LT{letter}  0 .. 1.000 m3  at %IW{place}  "Level"  bad after 0.3 s
            input  S{letter}  switch normally closed  at %IX{place}.0  "Motor runs"
            output M{letter}  motor  at %QX{place}.0  "Motor"  safe stopped, confirm S{letter} within 1 s, delivers WATER at 6.0 L/min
            output X{letter}  valve  at %QX{place}.1  "Valve"  safe open, de-energised open
            output V{letter}  0 .. 100.0 %  at %QW{place}  "Speed"  safe 10.0 %, rate at most 20.0 % in 1 s
            reagent WATER "Water"
            {declarations}
            procedure
              step 10 "One"
                run M{letter}
                set V{letter} to 40.0 %
                limit 1 h then hold "Too long"
                go 20 when LT{letter} > 0.200 m3 stays 1 s
              step 20 "Two"
                close X{letter} while {before}.S{before}
                limit 1 h then hold "Too long"
                go finish when {before}.LT{before} > 0.300 m3 stays 2 s

            """;
    }
}
