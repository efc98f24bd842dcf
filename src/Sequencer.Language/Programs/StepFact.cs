using Sequencer.Text;

namespace Sequencer.Language.Programs;

/// <summary>The step was active at the start of the scan; of another unit where <see cref="Unit"/> says so.</summary>
public sealed record StepFact(int Step, SourceSpan Span, string? Unit = null) : Condition(Span);
