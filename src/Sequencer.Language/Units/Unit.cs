namespace Sequencer.Language.Units;

/// <summary>A unit of measure: <see cref="Factor"/> base units of its <see cref="Dimension"/> make one.</summary>
public sealed record Unit(string Symbol, Dimension Dimension, Rational Factor);
