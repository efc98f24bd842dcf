using Sequencer.Text;

namespace Sequencer.Language.Programs;

/// <summary>The value that the batch was started with.</summary>
public sealed record ParameterQuantity(Parameter Parameter, SourceSpan Span) : Quantity(Parameter.Unit.Dimension, Span);
