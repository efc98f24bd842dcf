using Sequencer.Simulation.Loop;

namespace Sequencer.Simulation.Scenarios;

/// <summary>Something that can be seen to become true. True in the first scan counts as becoming true.</summary>
public abstract record Event
{
    private Event()
    {
    }

    /// <summary>The run starts.</summary>
    public sealed record Start : Event;

    /// <summary>A step becomes active.</summary>
    public sealed record StepActive(string Unit, string Step) : Event;

    /// <summary>A unit reaches a state.</summary>
    public sealed record StateReached(string Unit, UnitState State) : Event;

    /// <summary>A prompt is asked.</summary>
    public sealed record PromptAsked(string Prompt) : Event;

    /// <summary>A named value comes to be above, or below, a bound.</summary>
    public sealed record ValueCrosses(string Name, bool Above, Measure Bound) : Event;

    /// <summary>An output is energised, or de-energised.</summary>
    public sealed record OutputTurns(string Output, bool On) : Event;

    /// <summary>An alarm is raised.</summary>
    public sealed record AlarmRaised(string Alarm) : Event;
}
