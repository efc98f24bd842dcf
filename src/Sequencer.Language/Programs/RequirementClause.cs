using Sequencer.Text;

namespace Sequencer.Language.Programs;

/// <summary>What must be true whatever happens; <see cref="Statement"/> is the text as written after the title.</summary>
public sealed record RequirementClause(string Name, string Title, RequiredFact Fact, string Statement, SourceSpan Span);
