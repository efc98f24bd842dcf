using Sequencer.Language.Checking;
using Sequencer.Language.Programs;
using Sequencer.Language.Units;
using Sequencer.Text;

namespace Sequencer.Language.Tests.Checking;

public sealed class ProgramCheckerTests
{
    private const int Scan = 100;

    private static UnitProgram Full { get; } = Checked(SamplePrograms.Full);

    [Fact]
    public void The_whole_program_of_the_language_page_has_no_errors() => Assert.NotNull(Checked(SamplePrograms.Rinse));

    [Fact]
    public void Readings_come_in_steps_of_the_last_decimal()
    {
        AnalogueInput vacuum = Full.AnalogueInputs[2];
        Assert.Equal(Rational.FromInt64(100), vacuum.Resolution);
        Assert.Equal((-600, 0), (vacuum.Minimum, vacuum.Maximum));
        Assert.Equal("%IW4", vacuum.Address.ToString());
        AnalogueInput acidity = Full.AnalogueInputs[1];
        Assert.Equal(new Rational(1, 100), acidity.Resolution);
        Assert.Equal(2_000, acidity.BadAfter.Milliseconds);
        Assert.Same(Full.SwitchInputs[1], Assert.IsType<SwitchFact>(acidity.UsableWhile).Input);
    }

    [Fact]
    public void Switches_carry_their_polarity_and_delays()
    {
        SwitchInput level = Full.SwitchInputs[0];
        Assert.True(level.NormallyClosed);
        Assert.Equal((500, 1_000), (level.OnDelay.Milliseconds, level.OffDelay.Milliseconds));
    }

    [Fact]
    public void Outputs_carry_a_row_of_rest_values_a_confirmation_and_a_delivery()
    {
        Output valve = Full.Outputs[0];
        Assert.Equal(OutputKind.Valve, valve.Kind);
        Assert.Equal(Reaction.Abort, valve.Confirmation?.Reaction);
        Assert.Same(Full.SwitchInputs[3], valve.Confirmation?.Off);
        Output agitator = Full.Outputs[1];
        Assert.True(agitator is { Safe: { Value: true, Otherwise: false, IfBad: true, While: CompareFact }, Emergency.Value: false, Held.Last: true });
        Output pump = Full.Outputs[2];
        Assert.Equal(new Rational(1, 300), pump.Delivery?.LitresPerSecond);
        Assert.Same(Full.Reagents[0], pump.Delivery?.Reagent);
        Assert.Same(pump.Safe, pump.Emergency);
    }

    [Fact]
    public void Reagents_and_parameters_are_bound()
    {
        Assert.Equal(ReagentEffect.Lowers, Full.Reagents[0].Effect);
        Assert.Same(Full.AnalogueInputs[1], Full.Reagents[0].Signal);
        Assert.Equal("ACID", Assert.Single(Full.Reagents[1].Opposes));
        Assert.Equal((4_500, 3_000, 5_000), (Full.Parameters[1].Default, Full.Parameters[1].Minimum, Full.Parameters[1].Maximum));
    }

    [Fact]
    public void Protections_keep_their_form()
    {
        Assert.True(Full.Latches[0].Retained);
        Assert.Equal([InterlockForm.While, InterlockForm.Unless, InterlockForm.FromUntil], Full.Interlocks.Select(interlock => interlock.Form));
        Assert.True(Full.Interlocks[2].NeedsReset);
        Assert.Equal(60_000, Full.Exclusions[0].Between.Milliseconds);
        Assert.Equal((15_000L, Reaction.Hold), (Full.Permissives[0].Patience?.Milliseconds ?? 0, Full.Permissives[0].Reaction));
        Assert.Equal((Reaction.Emergency, BadSignal.Hold), (Full.Trips[0].Reaction, Full.Trips[0].IfBad));
        Assert.IsType<AllOf>(Full.Alarms[0].Condition);
    }

    [Fact]
    public void Assumptions_and_requirements_keep_their_form()
    {
        AssumedRate rate = Assert.IsType<AssumedRate>(Full.Assumptions[0].Fact);
        Assert.Equal(new Rational(20, 3), rate.PerSecond);
        Assert.True(Full.Assumptions[0].Monitored);
        Assert.IsType<AssumedNever>(Full.Assumptions[1].Fact);
        Assert.IsType<RequiredNever>(Full.Requirements[0].Fact);
        Assert.IsType<AllOf>(Assert.IsType<RequiredAlways>(Full.Requirements[1].Fact).While);
        RequiredResponse soon = Assert.IsType<RequiredResponse>(Full.Requirements[2].Fact);
        Assert.True(soon is { Goal: ResponseGoal.EverythingSafe, Scans: null, Within.Milliseconds: 2_000 });
        Assert.True(Full.Requirements[3].Fact is RequiredResponse { Goal: ResponseGoal.EverythingAtEmergency, Scans: 1, Trigger: EdgeFact { Rising: true } });
        Assert.True(Full.Requirements[4].Fact is RequiredResponse { Goal: ResponseGoal.Condition, GoalCondition: Negation, Scans: 2, Trigger: TripFact });
        Assert.Equal("after E1 latched P1 stopped within 2 scans", Full.Requirements[4].Statement);
    }

    [Fact]
    public void Steps_keep_their_actions_limits_and_ways()
    {
        Step fill = Full.Steps[0];
        Assert.Equal("Fills to the parameter.", fill.Documentation);
        Assert.True(fill.Actions[0] is DriveAction { On: true, After.Milliseconds: 5_000, For.Milliseconds: 1_200_000, While: Negation, Until: CompareFact });
        Assert.True(fill.Actions[1] is DriveAction { On: false });
        Assert.Equal(720_000, fill.Expected?.Milliseconds);
        DoseAction dose = Assert.IsType<DoseAction>(Full.Steps[1].Actions[0]);
        Assert.True(dose is { Pulse.Milliseconds: 5_000, FinePulse.Milliseconds: 2_000, Wait.Milliseconds: 45_000, Target: SumQuantity, NoResponsePulses: 3 });
        Assert.Equal((Reaction.Stop, Reaction.Alarm), (dose.MaximumReaction, dose.NoResponseReaction));
        Assert.Equal(40, Full.Steps[1].Limit.Target);
        Assert.Equal(["10>20,30", "10>", "20>25", "25,30>40", "40>"], Full.Transitions.Select(way => $"{string.Join(',', way.From)}>{string.Join(',', way.To)}"));
        Assert.True(Full.Transitions[2].When is StaysFact { AfterLastPulse: true, Condition: WithinFact });
        Assert.Equal(60_000, Full.RestartWait.Milliseconds);
        Assert.Single(Full.StartConditions);
    }

    [Fact]
    public void Checking_twice_gives_the_same_answer()
    {
        SourceText text = SamplePrograms.Source(SamplePrograms.Full.Replace("YS1", "YS2", StringComparison.Ordinal).Replace("m3", "min", StringComparison.Ordinal));
        string first = DiagnosticRenderer.Render(ProgramChecker.Check(text, Scan).Diagnostics);
        Assert.NotEmpty(first);
        Assert.Equal(first, DiagnosticRenderer.Render(ProgramChecker.Check(text, Scan).Diagnostics));
    }

    private static UnitProgram Checked(string text)
    {
        CheckResult result = ProgramChecker.Check(SamplePrograms.Source(text), Scan);
        string errors = DiagnosticRenderer.Render(result.Diagnostics.Where(diagnostic => string.CompareOrdinal(diagnostic.Code, "SEQ0400") < 0));
        Assert.Equal(string.Empty, errors);
        Assert.NotNull(result.Program);
        return result.Program;
    }
}
