using Sequencer.Text;

namespace Sequencer.Language.Programs;

/// <summary>A three-valued condition: surely, possibly or not so.</summary>
public abstract record Condition(SourceSpan Span);
