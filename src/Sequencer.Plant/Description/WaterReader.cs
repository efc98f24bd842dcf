using System.Collections.Immutable;
using Sequencer.Plant.Yaml;

namespace Sequencer.Plant.Description;

/// <summary>Reads supplies and reagents.</summary>
internal sealed class WaterReader(PlantNames names)
{
    /// <summary>Degrees in which water is liquid at ordinary pressure and the constants of the chemistry hold.</summary>
    public static readonly NumberRange LiquidCelsius = new(0.5, 95.0);

    /// <summary>The pH that a 4-20 mA loop for 0 to 14 can show; stronger waters are reagents.</summary>
    private static readonly NumberRange WaterPh = new(0.0, 14.0);

    /// <summary>Above saturated caustic soda; mol/L.</summary>
    private static readonly NumberRange Concentration = new(0.0, 25.0);

    private static readonly NumberRange SuspendedMilligramsPerLitre = new(0.0, 500_000.0);

    /// <summary>The grains themselves weigh 2.0 to 2.4 kg/L (common practice, no source).</summary>
    private static readonly NumberRange FilterAidMilligramsPerLitre = new(0.0, 3_000_000.0);

    /// <summary>Where a slurry's time of dissolving is not given: fine hydrated lime, from memory.</summary>
    private const double DefaultLimeDissolvesInSeconds = 15.0;

    private static readonly string[] BalancingIons = ["chloride", "nitrate", "potassium", "sodium", "sulphate"];

    public ImmutableArray<SupplyDescription> Supplies(YamlFields fields) =>
        [.. fields.Each("supplies").Select(entry => Supply(entry.Name, entry.Fields))];

    public ImmutableArray<ReagentDescription> Reagents(YamlFields fields) =>
        [.. fields.Each("reagents").Select(entry => Reagent(entry.Name, entry.Fields))];

    private SupplyDescription Supply(Placed<string> name, YamlFields fields)
    {
        names.Declare(name, NameKind.Supply);
        string balancedBy = fields.RequiredWord("balanced_by", BalancingIons);
        SupplyDescription supply = new(
            name.Value,
            fields.RequiredQuantity("temperature", Dimension.Temperature, LiquidCelsius),
            fields.RequiredNumber("pH", WaterPh),
            Substance.Find(balancedBy) ?? throw new InvalidOperationException($"{balancedBy} is a substance"),
            Dissolved(fields),
            (fields.OptionalQuantity("suspended", Dimension.MassConcentration, SuspendedMilligramsPerLitre)?.Value ?? 0.0) * 1e-3,
            fields.OptionalFlag("to_treat", false),
            name.Span);
        fields.RejectUnknownKeys();
        return supply;
    }

    private ReagentDescription Reagent(Placed<string> name, YamlFields fields)
    {
        names.Declare(name, NameKind.Reagent);
        Placed<string>? stirredBy = fields.OptionalText("stirred_by");
        if (stirredBy is not null)
        {
            names.Refer(stirredBy, "agitator", NameKind.Agitator);
        }

        ReagentDescription reagent = new(
            name.Value,
            Dissolved(fields),
            fields.OptionalQuantity("lime", Dimension.AmountConcentration, Concentration)?.Value ?? 0.0,
            fields.OptionalQuantity("lime_dissolves_in", Dimension.Time, NumberRange.Positive)?.Value ?? DefaultLimeDissolvesInSeconds,
            (fields.OptionalQuantity("filter_aid", Dimension.MassConcentration, FilterAidMilligramsPerLitre)?.Value ?? 0.0) * 1e-3,
            stirredBy?.Value,
            fields.RequiredQuantity("temperature", Dimension.Temperature, LiquidCelsius),
            fields.RequiredQuantity("store", Dimension.Volume, NumberRange.Positive),
            name.Span);
        fields.RejectUnknownKeys();
        return reagent;
    }

    private static ImmutableArray<Amount> Dissolved(YamlFields fields)
    {
        if (fields.OptionalFields("dissolved") is not { } dissolved)
        {
            return [];
        }

        ImmutableArray<Amount>.Builder amounts = ImmutableArray.CreateBuilder<Amount>();
        foreach (Placed<string> key in dissolved.Keys())
        {
            double molPerLitre = dissolved.RequiredQuantity(key.Value, Dimension.AmountConcentration, Concentration);
            if (Substance.Find(key.Value) is { } substance)
            {
                amounts.Add(new Amount(substance, molPerLitre));
            }
            else
            {
                fields.Diagnostics.Add(PlantDiagnostics.UnknownSubstance(key));
            }
        }

        return amounts.ToImmutable();
    }
}
