using Sequencer.Language.Units;
using Sequencer.Text;

namespace Sequencer.Language.Programs;

/// <summary>How long the unit may stay Held, and what follows.</summary>
public sealed record HeldLimit(Duration Time, Reaction Reaction, string Message, SourceSpan Span);
