using Sequencer.Language.Units;
using Sequencer.Text;

namespace Sequencer.Language.Programs;

/// <summary>
/// The longest time in a step and what follows: a reaction, or, where <see cref="GoTo"/> names a step,
/// the way there (with an alarm).
/// </summary>
public sealed record StepLimit(Duration Time, Reaction Reaction, int? GoTo, string Message, SourceSpan Span);
