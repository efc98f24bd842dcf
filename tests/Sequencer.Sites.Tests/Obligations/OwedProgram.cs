using System.Collections.Immutable;
using Sequencer.Control.TransitionSystems;
using Sequencer.Language.Checking;
using Sequencer.Language.Programs;
using Sequencer.Lowering;
using Sequencer.Text;

namespace Sequencer.Sites.Tests.Obligations;

/// <summary>A small unit that owes each of the standard obligations, and the same with one next value put out of order.</summary>
internal static class OwedProgram
{
    private const string Text = """
        language 1
        unit U "Bench"

        input LT1  0 .. 10.00 m3  at %IW0  "Level"  bad after 0.3 s
        input AT1  0 .. 14.00 pH  at %IW1  "pH"     bad after 0.3 s
        input S1   switch  at %IX0.0  "First"
        input S2   switch  at %IX0.1  "Second"

        reagent ACID    "Acid"    lowers AT1, opposes CAUSTIC
        reagent CAUSTIC "Caustic" raises AT1

        output P1  motor  at %QX0.0  "Acid pump"     safe stopped  delivers ACID at 6 L/min
        output P2  motor  at %QX0.1  "Caustic pump"  safe stopped  delivers CAUSTIC at 6 L/min
        output M1  motor  at %QX0.2  "Agitator"      safe stopped  held running  driven while stopping or aborting

        assume A1 "Never full" never LT1 > 9.00 m3

        interlock I1 "Only one" P2 blocked while P1
        interlock I2 "Empty"    P1 blocked while LT1 < 1.00 m3
        trip T1 "Second" when S2 then stop

        procedure
          step 10 "Fill"
            run M1
            limit 20 s then hold "Slow"
            go 20 when LT1 > 5.00 m3 stays 1 s
            go 30 when LT1 > 9.50 m3
          step 20 "Dose"
            dose P1 pulse 1 s then wait 2 s toward AT1 at 7.00 pH, at most 1 L a batch, no 0.10 pH in 3 pulses
            limit 30 s then hold "Slow"
            go finish when AT1 < 7.00 pH stays 1 s
          step 30 "Too full"
            run P2
            limit 10 s then hold "Slow"
            go finish when S1

        stopping
          step 910 "Run on"
            run M1
            limit 5 s then go finish "Slow"
            go 911 when S1
          step 911 "Run out"
            run M1
            limit 3 s then go finish "Slow"
            go finish when not S1

        aborting
          step 920 "Run on"
            run M1
            limit 4 s then go finish "Slow"
            go finish when S1 stays 2 s
        """;

    public static TransitionSystem System { get; } = Lowered(Text);

    /// <summary>The system of the program after an edit.</summary>
    public static TransitionSystem Edited(string before, string after)
    {
        Assert.Contains(before, Text, StringComparison.Ordinal);
        return Lowered(Text.Replace(before, after, StringComparison.Ordinal));
    }

    /// <summary>The system in which a state keeps its initial value for ever.</summary>
    public static TransitionSystem WithStuck(string state) => TransitionSystem.Create(
        System.Name,
        System.ScanMilliseconds,
        System.Inputs,
        [.. System.States.Select(one => one.Variable.Name == state ? one with { Next = Constant(one) } : one)],
        System.Outputs,
        System.Definitions,
        System.Assumptions,
        System.Requirements,
        System.Alarms,
        System.Goals);

    public static Requirement Requirement(string name) => System.Requirements.Single(requirement => requirement.Name == name);

    private static Expression Constant(StateVariable state) => state.Variable.Sort == Sort.Boolean
        ? new ExpressionBuilder().Constant(state.Initial == 1)
        : new ExpressionBuilder().Constant(state.Initial);

    private static TransitionSystem Lowered(string text)
    {
        SiteCheckResult result = SiteChecker.Check([new SourceText("bench.seq", text)], 100);
        ImmutableArray<Diagnostic> errors = [.. result.Diagnostics.Where(diagnostic => diagnostic.Severity == Severity.Error)];
        return errors.IsEmpty
            ? SiteLowering.LowerWithObligations(new SiteProgram("bench", 100, result.Units))
            : throw new ArgumentException(DiagnosticRenderer.Render(errors));
    }
}
