using Sequencer.Language.Programs;
using Sequencer.Language.Units;

namespace Sequencer.Language.Binding;

/// <summary>A number of a condition, with the unit it was written in (null for a bare pH).</summary>
internal sealed record WrittenLiteral(LiteralQuantity Quantity, Unit? Unit);
