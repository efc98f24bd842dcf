using Sequencer.Language.Units;

namespace Sequencer.Language.Programs;

/// <summary>
/// The reading rises (or falls) no faster than <see cref="PerSecond"/>, in base units a second; noise may
/// carry it beyond that by <see cref="Tolerance"/> steps of its resolution.
/// </summary>
public sealed record AssumedRate(AnalogueInput Input, bool Rises, Rational PerSecond, long Tolerance) : AssumedFact;
