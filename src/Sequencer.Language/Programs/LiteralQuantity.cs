using Sequencer.Language.Units;
using Sequencer.Text;

namespace Sequencer.Language.Programs;

/// <summary>A number with its unit, in base units.</summary>
public sealed record LiteralQuantity(Rational Value, Dimension Dimension, SourceSpan Span) : Quantity(Dimension, Span);
