using Sequencer.Text;

namespace Sequencer.Language.Programs;

public sealed record ReadingQuantity(AnalogueInput Input, SourceSpan Span) : Quantity(Input.Unit.Dimension, Span);
