using Sequencer.Plant.Yaml;

namespace Sequencer.Plant.Description;

/// <summary>What a description says of the cake of a filter; in kg, m and Pa.</summary>
internal sealed record LayerReading(double Resistance, double Compressibility, double DryDensity, double GrainDensity)
{
    private const double MilligramsPerGram = 1000.0;

    /// <summary>kg/m3: clays and silica some 2.6, hydroxides 2.4 to 3.4 kg/L of grain (from memory).</summary>
    private const double DefaultSolidGrain = 2600.0;

    private static readonly NumberRange Share = new(0.01, 0.99);
    private static readonly NumberRange CompressibilityRange = new(0.0, 1.0);
    private static readonly NumberRange LayerResistance = new(1e6, 1e14);
    private static readonly NumberRange CakeResistance = new(1e3, 1e16);

    public static LayerReading OfCake(YamlFields cake, string what)
    {
        LayerReading layer = new(
            cake.RequiredQuantity("resistance", Dimension.CakeResistance, CakeResistance),
            cake.RequiredNumber("compressibility", CompressibilityRange),
            Density(cake, "dry_density"),
            Grain(cake, DefaultSolidGrain));
        CheckGrain(cake, what, layer.DryDensity, layer.GrainDensity);
        return layer;
    }

    public static double ClothResistance(YamlFields cloth) => cloth.RequiredQuantity("resistance", Dimension.LayerResistance, LayerResistance);

    public static double HoldsBack(YamlFields cloth) => cloth.RequiredQuantity("holds_back", Dimension.Fraction, Share);

    /// <summary>kg/m3.</summary>
    public static double Density(YamlFields layer, string key) =>
        layer.RequiredQuantity(key, Dimension.MassConcentration, NumberRange.Positive) / MilligramsPerGram;

    public static double Grain(YamlFields layer, double otherwise) =>
        layer.OptionalQuantity("grain_density", Dimension.MassConcentration, NumberRange.Positive)?.Value / MilligramsPerGram ?? otherwise;

    public static void CheckGrain(YamlFields layer, string what, double dry, double grain)
    {
        if (dry >= grain)
        {
            layer.Diagnostics.Add(PlantDiagnostics.OutOfOrder(layer.SpanOf("dry_density"), what, "`dry_density`", "`grain_density`"));
        }
    }
}
