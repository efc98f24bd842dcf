using Sequencer.Language.Units;
using Sequencer.Text;

namespace Sequencer.Language.Programs;

/// <summary>A measured or given amount.</summary>
public abstract record Quantity(Dimension Dimension, SourceSpan Span);
