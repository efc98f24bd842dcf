namespace Sequencer.Language.Units;

/// <summary>What a quantity measures; only like is compared with or added to like.</summary>
public enum Dimension
{
    /// <summary>A bare number, a percentage.</summary>
    Number,

    /// <summary>Acidity in pH units; a bare number may stand for one.</summary>
    Acidity,

    /// <summary>Litre.</summary>
    Volume,

    /// <summary>Litre a second.</summary>
    VolumeFlow,

    /// <summary>Second.</summary>
    Time,

    /// <summary>Metre.</summary>
    Length,

    /// <summary>Kilogram.</summary>
    Mass,

    /// <summary>Pascal.</summary>
    Pressure,

    /// <summary>Degree Celsius.</summary>
    Temperature,

    /// <summary>Volt (redox potential).</summary>
    Voltage,

    /// <summary>Nephelometric turbidity unit.</summary>
    Turbidity,

    /// <summary>Kilogram a litre.</summary>
    MassConcentration,

    /// <summary>Siemens a metre.</summary>
    Conductivity,

    /// <summary>Turns a second.</summary>
    Rotation,
}
