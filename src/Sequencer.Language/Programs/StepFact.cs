using Sequencer.Text;

namespace Sequencer.Language.Programs;

/// <summary>The step was active at the start of the scan.</summary>
public sealed record StepFact(int Step, SourceSpan Span) : Condition(Span);
