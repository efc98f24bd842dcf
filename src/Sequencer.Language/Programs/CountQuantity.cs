using Sequencer.Text;

namespace Sequencer.Language.Programs;

/// <summary>What a count has come to at the start of the scan.</summary>
public sealed record CountQuantity(Count Count, SourceSpan Span) : Quantity(Count.Unit.Dimension, Span);
