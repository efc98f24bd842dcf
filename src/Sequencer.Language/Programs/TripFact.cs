using Sequencer.Text;

namespace Sequencer.Language.Programs;

/// <summary>The trip is latched.</summary>
public sealed record TripFact(string Trip, SourceSpan Span) : Condition(Span);
