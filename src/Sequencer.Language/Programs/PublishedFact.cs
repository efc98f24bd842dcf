using Sequencer.Text;

namespace Sequencer.Language.Programs;

/// <summary>A fact that a unit publishes by name: what its condition was in the last scan, unknown in the first.</summary>
public sealed record PublishedFact(string Name, string Description, Condition Condition, SourceSpan Span);
