using Sequencer.Text;

namespace Sequencer.Language.Programs;

/// <summary>From the lower to the upper bound, both included.</summary>
public sealed record WithinFact(Quantity Value, Quantity Lower, Quantity Upper, SourceSpan Span) : Condition(Span);
