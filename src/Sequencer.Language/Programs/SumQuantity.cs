using Sequencer.Text;

namespace Sequencer.Language.Programs;

public sealed record SumQuantity(Quantity Left, Quantity Right, bool Subtract, SourceSpan Span) : Quantity(Left.Dimension, Span);
