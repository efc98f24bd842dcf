using Sequencer.Text;

namespace Sequencer.Language.Programs;

/// <summary>How often a transition may be taken in a batch; wanted once more it asks for the reaction.</summary>
public sealed record WayCount(int Most, Reaction Reaction, string Message, SourceSpan Span);
