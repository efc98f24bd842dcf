namespace Sequencer.Language.Units;

/// <summary>Dimensions as a person names them.</summary>
internal static class DimensionWords
{
    public static string InWords(this Dimension dimension) => dimension switch
    {
        Dimension.Number => "a share",
        Dimension.Acidity => "an acidity",
        Dimension.Volume => "a volume",
        Dimension.VolumeFlow => "a flow",
        Dimension.Time => "a time",
        Dimension.Length => "a length",
        Dimension.Mass => "a mass",
        Dimension.Pressure => "a pressure",
        Dimension.Temperature => "a temperature",
        Dimension.Voltage => "a voltage",
        Dimension.Turbidity => "a turbidity",
        Dimension.MassConcentration => "a concentration",
        Dimension.Conductivity => "a conductivity",
        Dimension.Rotation => "a speed of rotation",
        _ => throw new System.Diagnostics.UnreachableException($"dimension {dimension}"),
    };
}
