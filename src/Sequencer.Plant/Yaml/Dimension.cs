namespace Sequencer.Plant.Yaml;

/// <summary>What a quantity of a plant or site file measures; each has one base unit that values are kept in.</summary>
public enum Dimension
{
    /// <summary>litre</summary>
    Volume,

    /// <summary>litre per second</summary>
    VolumeFlow,

    /// <summary>metre</summary>
    Length,

    /// <summary>square metre</summary>
    Area,

    /// <summary>second</summary>
    Time,

    /// <summary>one per second</summary>
    Frequency,

    /// <summary>pH unit</summary>
    Acidity,

    /// <summary>degree Celsius (a temperature, not a difference)</summary>
    Temperature,

    /// <summary>mole per litre</summary>
    AmountConcentration,

    /// <summary>milligram per litre</summary>
    MassConcentration,

    /// <summary>fraction; written in per cent</summary>
    Fraction,

    /// <summary>kilowatt</summary>
    Power,

    /// <summary>kilopascal</summary>
    Pressure,

    /// <summary>kilogram</summary>
    Mass,

    /// <summary>kilogram per second</summary>
    MassFlow,

    /// <summary>kilojoule per mole</summary>
    MolarEnergy,

    /// <summary>milliampere</summary>
    Current,

    /// <summary>millivolt</summary>
    Potential,

    /// <summary>nephelometric turbidity unit</summary>
    Turbidity,

    /// <summary>nephelometric turbidity unit for each gram of suspended solids in a litre</summary>
    Cloudiness,

    /// <summary>one per metre: what a thin layer sets against the flow through it, without the liquid's viscosity</summary>
    LayerResistance,

    /// <summary>metre per kilogram: that of a cake, for each kilogram of dry solids on a square metre</summary>
    CakeResistance,

    /// <summary>gram per mole</summary>
    MolarMass,

    /// <summary>kilowatt per kelvin: heat that a cooler passes on for each degree between its two sides</summary>
    Conductance,

    /// <summary>millisiemens per centimetre: what water conducts</summary>
    Conductivity,
}
