using Sequencer.Simulation.Loop;
using Sequencer.Simulation.Scenarios;
using Sequencer.Simulation.Words;

namespace Sequencer.Simulation.Running;

/// <summary>An alarm raised, or not raised.</summary>
internal sealed class AlarmCheck(Expectation.AlarmRaised expectation, EventWatch? since, int alarm) : Check(expectation, since)
{
    private long? _raised;

    protected override string Words() => $"alarm {expectation.Alarm} is {(expectation.Raised ? "raised" : "not raised")}";

    protected override void See(ClosedLoop loop)
    {
        if (_raised is null && loop.AlarmRaised(alarm))
        {
            _raised = loop.ScanNumber;
        }
    }

    protected override ExpectationResult Judge(ClosedLoop loop) => _raised is long scan
        ? Judged(expectation.Raised, $"raised at {DurationWords.Clock(loop.SecondsAt(scan))}", scan)
        : Judged(!expectation.Raised, "not raised", null);
}
