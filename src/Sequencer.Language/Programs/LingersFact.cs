using Sequencer.Language.Units;
using Sequencer.Text;

namespace Sequencer.Language.Programs;

/// <summary>
/// The condition holds, or ended less than <see cref="Time"/> ago: off-delay, as the TOF of
/// IEC 61131-3 (its other half, the on-delay, is <see cref="StaysFact"/>).
/// </summary>
public sealed record LingersFact(Condition Condition, Duration Time, SourceSpan Span) : Condition(Span);
