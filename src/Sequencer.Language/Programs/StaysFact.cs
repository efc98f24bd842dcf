using Sequencer.Language.Units;
using Sequencer.Text;

namespace Sequencer.Language.Programs;

/// <summary>
/// The condition holds now and held in all the scans of the time before. In a step it starts anew with
/// the step's activation and outside Running. <see cref="AfterLastPulse"/>: and no dose of the step is
/// giving a pulse.
/// </summary>
public sealed record StaysFact(Condition Condition, Duration Time, bool AfterLastPulse, SourceSpan Span) : Condition(Span);
