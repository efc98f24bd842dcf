using Sequencer.Simulation.Loop;
using Sequencer.Simulation.Scenarios;
using Sequencer.Simulation.Words;

namespace Sequencer.Simulation.Running;

/// <summary>An output on, or off, in every scan.</summary>
internal sealed class OutputCheck(Expectation.OutputAlways expectation, EventWatch? since, int output) : Check(expectation, since)
{
    private long? _otherwise;

    protected override string Words() => $"{expectation.Output} is {(expectation.On ? "always on" : "never on")}";

    protected override void See(ClosedLoop loop)
    {
        if (_otherwise is null && loop.OutputOn(output) != expectation.On)
        {
            _otherwise = loop.ScanNumber;
        }
    }

    protected override ExpectationResult Judge(ClosedLoop loop) => _otherwise is long scan
        ? Judged(false, $"{(expectation.On ? "off" : "on")} at {DurationWords.Clock(loop.SecondsAt(scan))}", scan)
        : Judged(true, expectation.On ? "always on" : "never on", null);
}
