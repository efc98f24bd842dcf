namespace Sequencer.Simulation.Metadata;

/// <summary>The value in another unit of the same dimension, exactly; null where the dimensions differ or a unit is unknown.</summary>
public delegate decimal? UnitConversion(decimal value, string from, string to);
