using Sequencer.Text;

namespace Sequencer.Simulation.Scenarios;

/// <summary>
/// In a run without the plant: from a time on, in seconds since the start, an input of the program has a value. The input
/// has its name in the transition system, as <c>LSHH301.contact</c>.
/// </summary>
public sealed record InputValue(double Seconds, string Input, Measure Value, SourceSpan Span);
