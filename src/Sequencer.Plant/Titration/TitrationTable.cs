using System.Collections.Immutable;

namespace Sequencer.Plant.Titration;

/// <summary>A sample to which a titrant was added in portions, and the pH after each had settled.</summary>
/// <param name="SampleLitres">Before anything was added.</param>
/// <param name="TitrantStrength">Equivalents of base in a litre of titrant; negative of an acid.</param>
/// <param name="Celsius">Of the sample.</param>
/// <param name="Points">Litres added so far and pH, in the order of the additions.</param>
public sealed record TitrationTable(double SampleLitres, double TitrantStrength, double Celsius, ImmutableArray<(double Litres, double Ph)> Points)
{
    /// <summary>Equivalents of base added to each litre of sample.</summary>
    public double BaseAdded(double litres) => litres * TitrantStrength / SampleLitres;

    /// <summary>By how much the sample has grown.</summary>
    public double Dilution(double litres) => (SampleLitres + litres) / SampleLitres;
}
