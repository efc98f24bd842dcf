using Sequencer.Language.Units;
using Sequencer.Text;

namespace Sequencer.Language.Programs;

/// <summary>What the output has delivered in this batch, in litres; its resolution is what one scan delivers.</summary>
public sealed record TotalQuantity(Output Output, SourceSpan Span) : Quantity(Dimension.Volume, Span);
