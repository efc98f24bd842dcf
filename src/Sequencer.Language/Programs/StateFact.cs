using Sequencer.Text;

namespace Sequencer.Language.Programs;

/// <summary>The unit was in the state at the start of the scan; another unit where <see cref="Unit"/> says so.</summary>
public sealed record StateFact(ProceduralState State, SourceSpan Span, string? Unit = null) : Condition(Span);
