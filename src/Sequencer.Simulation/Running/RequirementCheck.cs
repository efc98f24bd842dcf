using Sequencer.Control.TransitionSystems;
using Sequencer.Simulation.Loop;
using Sequencer.Simulation.Scenarios;
using Sequencer.Simulation.Words;

namespace Sequencer.Simulation.Running;

/// <summary>A requirement broken in one scan, and in none before it.</summary>
internal sealed class RequirementCheck : Check
{
    private readonly Expectation.RequirementBroken _expectation;
    private readonly int _requirement;
    private readonly long _expected;
    private long? _broken;

    private RequirementCheck(Expectation.RequirementBroken expectation, EventWatch? since, int requirement, long expected)
        : base(expectation, since)
    {
        _expectation = expectation;
        _requirement = requirement;
        _expected = expected;
    }

    public static RequirementCheck? Bind(Expectation.RequirementBroken expectation, EventWatch? since, ScenarioBinder binder, TransitionSystem system) =>
        binder.Names.Requirement(expectation.Requirement, expectation.Span) is int requirement
            ? new RequirementCheck(expectation, since, requirement, (long)Math.Round(expectation.Seconds * 1000 / system.ScanMilliseconds))
            : null;

    protected override string Words() => $"{_expectation.Requirement} is first broken at {DurationWords.Clock(_expectation.Seconds)}";

    protected override void See(ClosedLoop loop)
    {
        if (_broken is null && loop.Powered && !loop.Keeps(_requirement))
        {
            _broken = loop.ScanNumber;
        }
    }

    protected override ExpectationResult Judge(ClosedLoop loop) => _broken is long scan
        ? Judged(scan == _expected, $"broken at {DurationWords.Clock(loop.SecondsAt(scan))}", scan)
        : Judged(false, "never broken", null);
}
