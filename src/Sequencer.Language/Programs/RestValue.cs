using Sequencer.Text;

namespace Sequencer.Language.Programs;

/// <summary>
/// The value of an output that nobody demands: the last one written (<see cref="Last"/>), or
/// <see cref="Value"/> while <see cref="While"/> surely holds (always, without one), else
/// <see cref="Otherwise"/>; where the condition is unknown, <see cref="IfBad"/>.
/// </summary>
public sealed record RestValue(bool Last, bool Value, Condition? While, bool Otherwise, bool IfBad, SourceSpan Span);
