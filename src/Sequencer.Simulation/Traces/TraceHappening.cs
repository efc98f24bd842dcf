namespace Sequencer.Simulation.Traces;

/// <summary>Something that a reader of a run is told.</summary>
/// <param name="Kind">Who or what did it.</param>
/// <param name="Words">As a clause: <c>the operator presses start of TK301</c>.</param>
public sealed record TraceHappening(TraceHappeningKind Kind, string Words);
