using Sequencer.Language.Units;

namespace Sequencer.Language.Programs;

/// <summary>The reading rises (or falls) no faster than <see cref="PerSecond"/>, in base units a second.</summary>
public sealed record AssumedRate(AnalogueInput Input, bool Rises, Rational PerSecond) : AssumedFact;
