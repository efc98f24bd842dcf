using Sequencer.Language.Units;
using Sequencer.Text;

namespace Sequencer.Language.Programs;

/// <summary>
/// A step needs shared equipment for itself: it waits for it in the order of asking, at most for <see cref="Limit"/>.
/// <see cref="Equipment"/> has the name of the unit that declares it before its own. It is given up when no step that
/// claims it is active any more, and, where <see cref="ReleasedWhileHeld"/>, while the unit is not Running.
/// </summary>
public sealed record Claim(string Equipment, Duration Limit, Reaction Reaction, string Message, bool ReleasedWhileHeld, SourceSpan Span);
