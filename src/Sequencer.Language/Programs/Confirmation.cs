using Sequencer.Language.Units;
using Sequencer.Text;

namespace Sequencer.Language.Programs;

/// <summary>
/// The switches that tell whether the device obeys: one of the commanded state (open, running), and
/// for a valve perhaps one of the other end. Disagreement for longer than <see cref="Within"/> latches
/// the device's discrepancy, raises an alarm and asks for <see cref="Reaction"/>.
/// </summary>
public sealed record Confirmation(SwitchInput On, SwitchInput? Off, Duration Within, Reaction Reaction, SourceSpan Span);
