using Sequencer.Text;

namespace Sequencer.Language.Programs;

/// <summary>The unit was in the state at the start of the scan.</summary>
public sealed record StateFact(ProceduralState State, SourceSpan Span) : Condition(Span);
