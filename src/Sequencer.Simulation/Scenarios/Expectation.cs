using System.Collections.Immutable;
using Sequencer.Simulation.Loop;
using Sequencer.Text;

namespace Sequencer.Simulation.Scenarios;

/// <summary>
/// What must come of a scenario. <see cref="Since"/>, where given, limits it to the scans from that
/// moment on; a moment that never comes fails the expectation.
/// </summary>
public abstract record Expectation(SourceSpan Span)
{
    public Moment? Since { get; init; }

    /// <summary>The state a unit is in when the run ends.</summary>
    public sealed record FinalState(string Unit, UnitState State, SourceSpan Span) : Expectation(Span);

    /// <summary>A state reached at the latest at a time since the start of the run.</summary>
    public sealed record StateBefore(string Unit, UnitState State, double Seconds, SourceSpan Span) : Expectation(Span);

    /// <summary>An alarm raised, or not raised.</summary>
    public sealed record AlarmRaised(string Alarm, bool Raised, SourceSpan Span) : Expectation(Span);

    /// <summary>A named value inside bounds (either may be missing), in every scan or in the last.</summary>
    public sealed record ValueWithin(string Name, Measure? Minimum, Measure? Maximum, bool Always, SourceSpan Span) : Expectation(Span);

    /// <summary>An output on, or off, in every scan.</summary>
    public sealed record OutputAlways(string Output, bool On, SourceSpan Span) : Expectation(Span);

    /// <summary>Steps entered in this order; others may come between.</summary>
    public sealed record StepsVisited(string Unit, ImmutableArray<string> Steps, SourceSpan Span) : Expectation(Span);

    /// <summary>A requirement broken in the scan at a time since the start of the run, and in none before it.</summary>
    public sealed record RequirementBroken(string Requirement, double Seconds, SourceSpan Span) : Expectation(Span);

    /// <summary>Every activation of a step that ends lasts between two times (either may be missing), in seconds; holds count too.</summary>
    public sealed record StepLasts(string Unit, string Step, double? AtLeast, double? AtMost, SourceSpan Span) : Expectation(Span);
}
