using Sequencer.Language.Programs;
using Sequencer.Language.Units;

namespace Sequencer.Language.Rules.Analysis;

/// <summary>A reading, a parameter or a total, and the whole number by which a sum counts it.</summary>
internal readonly record struct LinearTerm(Quantity Leaf, Rational Factor);
