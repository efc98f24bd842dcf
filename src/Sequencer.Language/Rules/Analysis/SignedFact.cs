using Sequencer.Language.Programs;

namespace Sequencer.Language.Rules.Analysis;

/// <summary>A fact at the leaf of a condition; see <see cref="ConditionTree.Facts"/>.</summary>
internal readonly record struct SignedFact(Condition Fact, bool Positive, bool Timed);
