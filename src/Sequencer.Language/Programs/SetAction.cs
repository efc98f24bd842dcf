using Sequencer.Text;

namespace Sequencer.Language.Programs;

/// <summary>The analogue output has the value, a literal or a parameter, while the step is active.</summary>
public sealed record SetAction(AnalogueOutput Output, Quantity Value, SourceSpan Span) : StepAction(Span);
