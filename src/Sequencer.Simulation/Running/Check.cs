using Sequencer.Simulation.Loop;
using Sequencer.Simulation.Scenarios;

namespace Sequencer.Simulation.Running;

/// <summary>Watches one expectation through a run.</summary>
internal abstract class Check(Expectation expectation, EventWatch? since)
{
    protected Expectation Expectation => expectation;

    /// <summary>Null, with diagnostics, where a name or value does not fit the site.</summary>
    public static Check? Bind(Expectation expectation, ScenarioBinder binder, ClosedLoop loop)
    {
        EventWatch? since = expectation.Since is Moment moment ? binder.Watch(moment) : null;
        return expectation switch
        {
            Expectation.FinalState or Expectation.StateBefore => StateCheck.Bind(expectation, since, binder),
            Expectation.AlarmRaised alarm => binder.Names.Alarm(alarm.Alarm, alarm.Span) is int place ? new AlarmCheck(alarm, since, place) : null,
            Expectation.ValueWithin value => ValueCheck.Bind(value, since, binder),
            Expectation.OutputAlways output => binder.Names.Output(output.Output, output.Span) is int place ? new OutputCheck(output, since, place) : null,
            Expectation.RequirementBroken broken => RequirementCheck.Bind(broken, since, binder, loop.System),
            Expectation.StepLasts step => StepTimeCheck.Bind(step, since, binder),
            Expectation.StepsVisited steps => VisitCheck.Bind(steps, since, binder),
            _ => throw new System.Diagnostics.UnreachableException($"no check for {expectation.GetType().Name} in {loop.System.Name}"),
        };
    }

    /// <summary>Whether only what is so in the last scan counts, so that it need not be asked before.</summary>
    public bool IsAskedAtEnd => since is null && CountsAtEnd;

    /// <summary>Whether only the last scan of those that it counts has a say.</summary>
    protected virtual bool CountsAtEnd => false;

    public void Observe(ClosedLoop loop)
    {
        since?.Observe(loop);
        if (since is null || since.HasCome)
        {
            See(loop);
        }
    }

    public ExpectationResult Result(ClosedLoop loop) => since is null || since.HasCome
        ? Judge(loop)
        : new ExpectationResult(expectation, false, Words(), "the moment it counts from never came", null);

    protected abstract string Words();

    protected abstract void See(ClosedLoop loop);

    protected abstract ExpectationResult Judge(ClosedLoop loop);

    protected ExpectationResult Judged(bool passed, string seen, long? scan) => new(expectation, passed, Words(), seen, scan);
}
