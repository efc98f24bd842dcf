using Sequencer.Simulation.Loop;
using Sequencer.Simulation.Records;
using Sequencer.Simulation.Running;
using Sequencer.Simulation.Scenarios;
using Sequencer.Simulation.Tests.Tank;

namespace Sequencer.Simulation.Tests;

public sealed class ScenarioRunTests
{
    [Fact]
    public void A_batch_runs_to_its_end_and_stops_when_the_script_says()
    {
        ScenarioResult result = TankRun.Play(TankRun.Batch with
        {
            Expectations =
            [
                new Expectation.FinalState("R101", UnitState.Complete, TankRun.Place),
                new Expectation.StateBefore("R101", UnitState.Complete, 1500, TankRun.Place),
                new Expectation.StepsVisited("R101", ["10", "20", "30"], TankRun.Place),
                new Expectation.StepLasts("R101", "20", 10, 1500, TankRun.Place),
                new Expectation.AlarmRaised("A1", false, TankRun.Place),
                new Expectation.ValueWithin("P201.total", new Measure(2m, "L"), new Measure(3m, "L"), false, TankRun.Place),
                new Expectation.ValueWithin("TK101.volume", null, new Measure(4600m, "L"), true, TankRun.Place),
            ],
        });
        Assert.All(result.Expectations, expectation => Assert.True(expectation.Passed, $"{expectation.Expected}: {expectation.Seen}"));
        Assert.True(result.Passed);
        Assert.False(result.EndedByDuration);
        Assert.InRange(result.Record.Seconds, 1200, 1300);
    }

    [Fact]
    public void Each_expectation_can_fail_and_says_what_was_seen()
    {
        ScenarioResult result = TankRun.Play(TankRun.Batch with
        {
            Expectations =
            [
                new Expectation.FinalState("R101", UnitState.Held, TankRun.Place),
                new Expectation.StateBefore("R101", UnitState.Complete, 600, TankRun.Place),
                new Expectation.StateBefore("R101", UnitState.Aborted, 600, TankRun.Place),
                new Expectation.StepsVisited("R101", ["20", "10"], TankRun.Place),
                new Expectation.StepLasts("R101", "10", null, 60, TankRun.Place),
                new Expectation.AlarmRaised("A1", true, TankRun.Place),
                new Expectation.ValueWithin("TK101.volume", null, new Measure(4.4m, "m3"), true, TankRun.Place),
                new Expectation.ValueWithin("LT101", new Measure(1m, "m3"), null, false, TankRun.Place),
                new Expectation.OutputAlways("P201", false, TankRun.Place),
                new Expectation.OutputAlways("P101", true, TankRun.Place),
                new Expectation.FinalState("R101", UnitState.Complete, TankRun.Place) { Since = new Moment(new Event.AlarmRaised("A1"), 0, TankRun.Place) },
            ],
        });
        Assert.All(result.Expectations, expectation => Assert.False(expectation.Passed, expectation.Expected));
        Assert.Equal(
            [
                "Complete at the end",
                "Complete at 0:20:34.5",
                "never Aborted; Complete at the end",
                "step 10 was not active after step 20",
                "10 min 45 s",
                "not raised",
                "4.401 m3 at 0:10:31.3; 0.099 m3 to 4.501 m3 in all",
                "0.099 m3 at the end",
                "on at 0:10:46.3",
                "off at 0:00:00",
                "the moment it counts from never came",
            ],
            result.Expectations.Select(expectation => expectation.Seen));
    }

    [Fact]
    public void A_hold_and_a_restart_freeze_the_dose_and_finish_it()
    {
        ScenarioResult result = TankRun.Play(TankRun.Batch with
        {
            Actions =
            [
                .. TankRun.Batch.Actions,
                TankRun.When(new Event.StepActive("R101", "20"), new Deed.Press("R101.hold"), 20),
                TankRun.When(new Event.StateReached("R101", UnitState.Held), new Deed.Press("R101.restart"), 60),
            ],
            Expectations = [new Expectation.ValueWithin("P201.total", new Measure(2.4m, "L"), new Measure(2.4m, "L"), false, TankRun.Place)],
        });
        Assert.True(result.Passed, result.Expectations[0].Seen);
        Assert.Equal(
            [UnitState.Idle, UnitState.Running, UnitState.Held, UnitState.Running, UnitState.Complete],
            result.Record.States.Select(visit => visit.State));
        StateVisit held = result.Record.States[2];
        Assert.Equal(601, held.ToScan - held.FromScan);
    }

    [Fact]
    public void A_loss_of_power_is_recorded_and_leaves_the_unit_held()
    {
        ScenarioResult result = TankRun.Play(TankRun.Batch with
        {
            Actions = [.. TankRun.Batch.Actions, TankRun.When(new Event.ValueCrosses("LT101", true, new Measure(2m, "m3")), new Deed.LosePower(120))],
            DurationSeconds = 900,
            Expectations = [new Expectation.FinalState("R101", UnitState.Held, TankRun.Place)],
        });
        Assert.True(result.Passed);
        Assert.True(result.EndedByDuration);
        RunEvent[] power = [.. result.Record.Events.Where(happening => happening.Kind is RunEventKind.PowerLost or RunEventKind.PowerReturned)];
        Assert.Equal(2, power.Length);
        Assert.Equal(1200, power[1].Scan - power[0].Scan);
    }

    [Fact]
    public void A_fault_can_be_injected_and_cleared()
    {
        ScenarioResult result = TankRun.Play(TankRun.Batch with
        {
            Actions = [.. TankRun.Batch.Actions, TankRun.At(60, new Deed.Inject("LT101.broken")), TankRun.At(90, new Deed.Clear("LT101.broken"))],
            Expectations = [new Expectation.AlarmRaised("A2", true, TankRun.Place)],
        });
        Assert.True(result.Passed);
        AlarmTimes alarm = Assert.Single(AlarmTimes.Of(result.Record));
        Assert.Equal(new ScanInterval(601, 901), Assert.Single(alarm.Times));
    }

    [Fact]
    public void Manual_and_settings_reach_the_program()
    {
        ScenarioResult result = TankRun.Play(new Scenario("manual", "", 120, TankRun.Place)
        {
            Settings = [new ParameterSetting("R101.fill_volume", new Measure(3200m, "L"), TankRun.Place)],
            Actions =
            [
                TankRun.At(10, new Deed.Manual("P101", ManualMode.On)),
                TankRun.At(20, new Deed.Manual("P101", ManualMode.Off)),
                TankRun.At(30, new Deed.Set("R101.fill_volume", new Measure(3.1m, "m3"))),
                TankRun.At(31, new Deed.Press("R101.start")),
                TankRun.At(40, new Deed.Manual("P101", ManualMode.Automatic)),
            ],
            Expectations = [new Expectation.ValueWithin("R101.fill_volume.batch", new Measure(3.1m, "m3"), new Measure(3.1m, "m3"), false, TankRun.Place)],
        });
        Assert.True(result.Passed, result.Expectations[0].Seen);
        Assert.Equal(3.2, Assert.Single(result.Record.Settings).Value, 9);
        OutputTally pump = result.Record.Outputs.Single(output => output.Output == "P101");
        Assert.Equal(new ScanInterval[] { new(101, 201), new(401, 1200) }, pump.OnTimes);
    }

    [Fact]
    public void An_action_whose_moment_never_came_fails_the_run()
    {
        ScenarioResult result = TankRun.Play(TankRun.Batch with
        {
            Actions = [.. TankRun.Batch.Actions, TankRun.When(new Event.AlarmRaised("A1"), new Deed.Press("R101.abort"))],
        });
        Assert.False(result.Passed);
        Assert.Equal("press R101.abort", Assert.Single(result.Undone).Words);
    }

    [Fact]
    public void The_second_occurrence_waits_for_the_second_time()
    {
        ScenarioResult result = TankRun.Play(TankRun.Batch with
        {
            Actions =
            [
                .. TankRun.Batch.Actions,
                new ScriptedAction(new Moment(new Event.OutputTurns("P201", true), 0, TankRun.Place, 3), new Deed.Press("R101.abort"), TankRun.Place),
            ],
            Until = null,
            DurationSeconds = 700,
        });
        Assert.Equal(3, result.Record.Outputs.Single(output => output.Output == "P201").Pulses);
    }

    [Fact]
    public void A_plant_model_that_lost_its_meaning_ends_the_run_and_fails_it()
    {
        ScenarioResult result = TankRun.Play(TankRun.Batch with { Actions = [TankRun.At(5, new Deed.Inject("model.broken"))] });
        Assert.False(result.Passed);
        Assert.Equal("volume balance", result.Record.Failure?.Equation);
        Assert.InRange(result.Record.Scans, 51, 52);
    }

    [Fact]
    public void Names_and_values_that_do_not_fit_are_all_reported_in_one_pass()
    {
        Scenario wrong = TankRun.Batch with
        {
            Settings =
            [
                new ParameterSetting("R101.fill_volume", new Measure(9m, "m3"), TankRun.Place),
                new ParameterSetting("R101.fill_volume", new Measure(4.00005m, "m3"), TankRun.Place),
                new ParameterSetting("R101.fill_volume", new Measure(4m, "pH"), TankRun.Place),
                new ParameterSetting("LT101", new Measure(4m, "m3"), TankRun.Place),
            ],
            Actions =
            [
                TankRun.At(1, new Deed.Press("R102.start")),
                TankRun.At(1, new Deed.Inject("LT101.melted")),
                TankRun.When(new Event.StepActive("R101", "99"), new Deed.Manual("P999", ManualMode.On)),
            ],
            Expectations = [new Expectation.AlarmRaised("A9", true, TankRun.Place), new Expectation.FinalState("R9", UnitState.Idle, TankRun.Place)],
        };
        Assert.Equal(
            ["SEQ0610", "SEQ0610", "SEQ0610", "SEQ0610", "SEQ0610", "SEQ0610", "SEQ0611", "SEQ0612", "SEQ0613", "SEQ0614"],
            TankRun.Mistakes(wrong).Select(diagnostic => diagnostic.Code));
    }

    [Fact]
    public void The_run_can_be_cancelled()
    {
        using CancellationTokenSource source = new();
        source.Cancel();
        ScenarioRun run = ScenarioRun.Bind(TankRun.Loop(), TankRun.Batch, new Text.DiagnosticBag()) ?? throw new InvalidOperationException();
        Assert.Throws<OperationCanceledException>(() => run.Play(null, source.Token));
    }
}
