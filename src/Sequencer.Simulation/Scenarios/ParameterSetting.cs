using Sequencer.Text;

namespace Sequencer.Simulation.Scenarios;

/// <summary>The operator's setting of a parameter before the run starts.</summary>
public sealed record ParameterSetting(string Parameter, Measure Value, SourceSpan Span);
