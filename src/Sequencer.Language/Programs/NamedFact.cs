using Sequencer.Text;

namespace Sequencer.Language.Programs;

/// <summary>A published fact holds; <see cref="Fact"/> is qualified (<c>F220.READY</c>) where it is another unit's.</summary>
public sealed record NamedFact(string Fact, SourceSpan Span) : Condition(Span);
