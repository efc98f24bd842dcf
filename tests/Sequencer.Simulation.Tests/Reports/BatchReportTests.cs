using Sequencer.Simulation.Loop;
using Sequencer.Simulation.Reports;
using Sequencer.Simulation.Scenarios;
using Sequencer.Simulation.Tests.Tank;
using Sequencer.Testing;

namespace Sequencer.Simulation.Tests.Reports;

public sealed class BatchReportTests
{
    [Fact]
    public void The_report_is_the_golden_one() => GoldenFile.Matches(
        BatchReport.Write(
            TankRun.Play(TankRun.Batch with
            {
                Actions =
                [
                    .. TankRun.Batch.Actions,
                    TankRun.At(60, new Deed.Inject("LT101.broken")),
                    TankRun.At(90, new Deed.Clear("LT101.broken")),
                    TankRun.When(new Event.AlarmRaised("A1"), new Deed.Press("R101.abort")),
                ],
                Expectations =
                [
                    new Expectation.FinalState("R101", UnitState.Complete, TankRun.Place),
                    new Expectation.AlarmRaised("A1", true, TankRun.Place),
                    new Expectation.OutputAlways("P201", false, TankRun.Place) { Since = new Moment(new Event.StepActive("R101", "30"), 0, TankRun.Place) },
                ],
            }),
            TankProgram.Site),
        "tank-batch.verified.md");

    [Fact]
    public void A_run_without_expectations_says_that_it_tested_nothing() =>
        Assert.Contains("nothing was expected, so nothing was tested", BatchReport.Write(TankRun.Play(TankRun.Batch), TankProgram.Site), StringComparison.Ordinal);

    [Fact]
    public void A_stopped_plant_model_is_no_result() => Assert.Contains(
        "**not valid**: the plant model stopped: TK101: volume balance: broken on purpose",
        BatchReport.Write(TankRun.Play(TankRun.Batch with { Actions = [TankRun.At(5, new Deed.Inject("model.broken"))] }), TankProgram.Site),
        StringComparison.Ordinal);
}
