using Sequencer.Text;

namespace Sequencer.Language.Programs;

/// <summary>What is truly so; known to requirements only.</summary>
public sealed record RealQuantity(Real Real, SourceSpan Span) : Quantity(Real.Input.Unit.Dimension, Span);
