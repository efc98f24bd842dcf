using Sequencer.Text;

namespace Sequencer.Language.Programs;

/// <summary>The unit, or any where null, owned the shared equipment at the start of the scan.</summary>
public sealed record OwnerFact(string Equipment, string? Unit, SourceSpan Span) : Condition(Span);
