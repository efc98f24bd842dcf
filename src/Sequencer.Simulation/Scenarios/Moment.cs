using Sequencer.Text;

namespace Sequencer.Simulation.Scenarios;

/// <summary>
/// When an event happens for the <see cref="Occurrence"/>-th time (from 1), and
/// <see cref="DelaySeconds"/> after that.
/// </summary>
public sealed record Moment(Event Event, double DelaySeconds, SourceSpan Span, int Occurrence = 1);
