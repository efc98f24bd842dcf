using Sequencer.Text;

namespace Sequencer.Language.Programs;

/// <summary>Protections with a reset and a first-out of their own; what is in no group is in the unit's own.</summary>
public sealed record ProtectionGroup(string Name, string Title, SourceSpan Span);
