using System.Collections.Immutable;
using Sequencer.Plant.Yaml;

namespace Sequencer.Plant.Description;

/// <summary>Reads <c>holds</c>: substances of which what the water has as a solid is held.</summary>
internal static class RetainedReader
{
    private static readonly NumberRange MolarMass = new(1.0, 1_000.0);

    public static ImmutableArray<(Substance Substance, double GramsPerMole)> Read(YamlFields fields)
    {
        if (fields.OptionalFields("holds") is not { } holds)
        {
            return [];
        }

        ImmutableArray<(Substance, double)>.Builder all = ImmutableArray.CreateBuilder<(Substance, double)>();
        foreach (Placed<string> key in holds.Keys())
        {
            double gramsPerMole = holds.RequiredQuantity(key.Value, Dimension.MolarMass, MolarMass);
            if (Substance.Find(key.Value) is { } substance)
            {
                all.Add((substance, gramsPerMole));
            }
            else
            {
                fields.Diagnostics.Add(PlantDiagnostics.UnknownSubstance(key));
            }
        }

        return all.ToImmutable();
    }
}
