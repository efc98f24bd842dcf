using System.Collections.Immutable;
using Sequencer.Control.Execution;
using Sequencer.Control.TransitionSystems;
using Sequencer.Export.Equivalence;

namespace Sequencer.Export.Tests.Actions;

/// <summary>Each construct's text is proved equal to its program, and the compiled scan does what the interpreter does.</summary>
public sealed class ActionTests
{
    private const string Lime = """
        output PD1 motor at %QX1.0 "Lime pump" safe stopped delivers LIME at 60.0 L/min
        reagent LIME "Lime"
        interlock I1 "Mixed" PD1 blocked unless S2
        """;

    private const string Feed = Lime + """

        output P9 motor at %QX2.0 "Feed" safe stopped delivers WATER at 600 L/min
        reagent WATER "Feed"
        interlock I9 "Dry" P9 blocked while S3
        """;

    public static TheoryData<string> Names => [.. Programs.Keys];

    private static Dictionary<string, ActionProgram> Programs { get; } = new(StringComparer.Ordinal)
    {
        ["dose of an amount"] = TwoSteps(Lime, "dose PD1 amount 1.0 L once a batch", "PD1 dosed"),
        ["dose in proportion to a reading"] = TwoSteps(Lime, "dose PD1 amount 0.5 L per m3 of LT1, at most 4 L a batch then stop", "PD1 dosed"),
        ["dose in proportion to a setting"] = TwoSteps(
            Lime + "\nparameter volume = 2.0 m3 from 1.0 m3 to 4.0 m3", "dose PD1 amount 0.5 L per m3 of volume, at most 4 L a batch", "PD1 dosed"),
        ["dose that follows a total"] = TwoSteps(
            Feed, "run P9\n    dose PD1 amount 10 L per m3 of P9.total in pulses of 0.3 s, at most 4 L a batch", "P9.total > 300 L"),
        ["prompt"] = TwoSteps(
            "",
            """
            prompt Q1 "Clear?" answers "clear", "yellow", "brown" role Operator, limit 2 min then stop "Nobody answered"
                prompt Q2 "Sampled?" answers "done" role Laboratory limit 10 min then alarm "No sample"
            """,
            "Q1 answered and Q2 answered \"done\""),
        ["record"] = TwoSteps(Lime, "dose PD1 amount 1.0 L once a batch\n    record \"Level\" LT1\n    record \"Lime\" PD1.total", "PD1 dosed"),
        ["counted way"] = new ActionProgram("", """
              step 10 "There"
                limit 1 h then hold "Too long"
                go 20 and 25 when S1
                go 10 when S2, at most 4 times then abort "Round and round"
              step 20 "Left"
                limit 1 h then hold "Too long"
                go finish when LT1 > 9.00 m3
                go 10 when S3 stays 0.3 s, at most 3 times then hold "Turned too often"
              step 25 "Right"
                limit 1 h then go 10 "Too long"
              join 20, 25 to 10 when S2
            """),
        ["counted one by one"] = new ActionProgram("", """
              step 10 "There"
                limit 1 h then hold "Too long"
                go 20 when S1
                go 10 when S2, at most 4 times then abort "Round and round"
              step 20 "Back"
                limit 1 h then hold "Too long"
                go finish when LT1 > 9.00 m3
                go 10 when S3 stays 0.3 s, at most 3 times then hold "Turned too often"
            """),
        ["kept action"] = new ActionProgram("", """
              step 10 "Set"
                keep M1 running until step 30
                limit 1 h then hold "Too long"
                go 20 when S1
              step 20 "Between"
                keep X1 open until step 30
                stop M2
                limit 1 h then hold "Too long"
                go 30 when S2
              step 30 "Reset"
                limit 1 h then hold "Too long"
                go 10 when S3, at most 2 times then hold "Again"
                go finish when S1
            """),
        ["analogue outputs"] = new ActionProgram(
            """
            output SC1 0 .. 100.0 % at %QW0 "Speed" safe 5.0 %, emergency 0.0 %, rate at most 10.0 % in 1 s
            output SC2 -50 .. 50 kPa at %QW2 "Pressure" safe -10 kPa
            parameter speed = 40.0 % from 20.0 % to 60.0 %
            interlock I1 "Stopped" SC1, M1 blocked while S3
            trip T1 "Emergency" when S2 and S3 then emergency
            require R1 "Rests" after T1 latched everything at its emergency value within 1 scan
            """,
            """
              step 10 "Run"
                run M1
                set SC1 to speed
                ramp SC2 from -10 kPa to 40 kPa in 2 min
                limit 1 h then hold "Too long"
                go 20 when S1
              step 20 "Down"
                set SC1 to 12.5 %
                ramp SC2 from 40 kPa to -50 kPa in 2 s
                limit 1 h then hold "Too long"
                go finish when S2
            """),
        ["run once a batch"] = TwoSteps("", "run M1 after 0.2 s for 0.6 s once a batch", "S2"),
        ["step entered while active"] = new ActionProgram("", """
              step 10 "There"
                limit 1 h then hold "Too long"
                go 20 and 25 when S1
                go 10 when S2
              step 20 "Left"
                limit 1 h then hold "Too long"
                go finish when LT1 > 9.00 m3
                go 10 when S3 stays 0.3 s
              step 25 "Right"
                limit 1 h then go 10 "Too long"
              join 20, 25 to 10 when S2
            """),
        ["run at each edge"] = TwoSteps("", "run M1 for 0.3 s at each rising (S2 or LT1 > 5.00 m3)", "S3"),
    };

    [Theory]
    [MemberData(nameof(Names))]
    public void The_text_is_proved_equal(string name)
    {
        ActionProgram program = Programs[name];
        EqualityResult result = program.Decide(program.Export.Text);

        string words = result is ProvedDifferent different ? $"{different.Difference}; program {different.InProgram}, text {different.InText}" : $"{result}";
        Assert.True(result is ProvedEqual, words);
        ProvedEqual proved = (ProvedEqual)result;
        Assert.True(proved.Compared >= program.System.Outputs.Length + program.System.Alarms.Length, $"only {proved.Compared} are compared");
    }

    [Theory]
    [InlineData("dose of an amount", "_given < 10", "_given < 9")]
    [InlineData("dose in proportion to a reading", "_given + 1) <= 40", "_given + 1) <= 41")]
    [InlineData("dose that follows a total", "_left := 3", "_left := 2")]
    [InlineData("analogue outputs", "SC1_Last - 10", "SC1_Last - 11")]
    [InlineData("analogue outputs", "SC1_Demand := 125", "SC1_Demand := 126")]
    [InlineData("counted way", "(Step20_Go_10_Count >= 3)", "(Step20_Go_10_Count >= 2)")]
    [InlineData("counted way", "(Step10_Go_10_Count < 4)", "(Step10_Go_10_Count < 3)")]
    [InlineData("kept action", "IF Step30_Entered OR", "IF Step20_Entered OR")]
    [InlineData("prompt", "_answer = 3", "_answer = 2")]
    [InlineData("prompt", "(Q1_clock >= 1200)", "(Q1_clock >= 1199)")]
    [InlineData("run once a batch", "_given < 6", "_given < 5")]
    [InlineData("run at each edge", "_left := 3", "_left := 2")]
    public void A_changed_text_is_not_equal(string name, string from, string to)
    {
        ActionProgram program = Programs[name];
        Assert.Contains(from, program.Export.Text, StringComparison.OrdinalIgnoreCase);
        string changed = program.Export.Text.Replace(from, to, StringComparison.OrdinalIgnoreCase);

        Assert.IsType<ProvedDifferent>(program.Decide(changed));
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void The_compiled_scan_does_what_the_interpreter_does(string name)
    {
        TransitionSystem system = Programs[name].System;
        ImmutableArray<Expression> observed = [.. system.Definitions.Select(definition => definition.Value), .. system.Alarms.Select(alarm => alarm.Raised)];
        Interpreter interpreter = new(system, observed);
        CompiledStepper compiled = new(system, observed);
        Random random = new(1);
        for (int scan = 0; scan < 20_000; scan++)
        {
            for (int input = 0; input < system.Inputs.Length; input++)
            {
                if (random.Next(12) == 0)
                {
                    IntegerRange range = system.Inputs[input].Range;
                    interpreter.Inputs[input] = compiled.Inputs[input] = random.NextInt64(range.Minimum, range.Maximum + 1);
                }
            }

            interpreter.Step();
            compiled.Step();
            Assert.Equal(interpreter.States.ToArray(), compiled.States.ToArray());
            Assert.Equal(interpreter.Outputs, compiled.Outputs);
            Assert.Equal(interpreter.Observed, compiled.Observed);
        }
    }

    private static ActionProgram TwoSteps(string declarations, string lines, string condition) => new(declarations, $"""
          step 10 "Act"
            {lines}
            limit 1 h then hold "Too long"
            go 20 when {condition}
          step 20 "Rest"
            limit 1 h then hold "Too long"
            go 10 when S3
            go finish when S1
        """);
}
