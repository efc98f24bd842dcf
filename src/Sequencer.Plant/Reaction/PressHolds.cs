using Sequencer.Plant.Description;

namespace Sequencer.Plant.Reaction;

/// <summary>What is in a filter press and what has fallen out of it, read from a state.</summary>
internal sealed class PressHolds
{
    private const double GramsPerKilogram = 1000.0;

    private readonly PressDescription _description;
    private readonly StateLayout _layout;
    private readonly int _index;

    public PressHolds(PressDescription description, int index, ContentLayout contents, StateLayout layout)
    {
        _description = description;
        _layout = layout;
        _index = index;
        Cake = new CakeLayer(description.CakeKilogramsPerCubicMetre, description.GrainKilogramsPerCubicMetre);
        GramsEach = SolidWeights.Of(contents, description.Retained);
    }

    public CakeLayer Cake { get; }

    /// <summary>Dry grams for each unit of a content that the press holds back; 0 for what is dissolved.</summary>
    public double[] GramsEach { get; }

    public double WaterLitres(ReadOnlySpan<double> state) => state[_layout.PressWater(_index)];

    public double DryGrams(ReadOnlySpan<double> state)
    {
        double grams = 0.0;
        for (int content = 0; content < GramsEach.Length; content++)
        {
            grams += state[_layout.PressHeld(_index) + content] * GramsEach[content];
        }

        return grams;
    }

    /// <summary>Litres of water and grains.</summary>
    public double Litres(ReadOnlySpan<double> state) => WaterLitres(state) + Cake.GrainLitres(DryGrams(state));

    /// <summary>Litres that its solids take up as cake, pores and all.</summary>
    public double CakeLitres(ReadOnlySpan<double> state) => Cake.Litres(DryGrams(state));

    /// <summary>Litres of water that its solids hold at a density of dry solids, kg/m3.</summary>
    public double WaterAt(double density, ReadOnlySpan<double> state) => (Cake with { DryDensity = density }).PoreLitres(DryGrams(state));

    /// <summary>Dry solids on a square metre of cloth.</summary>
    public double KilogramsPerSquareMetre(ReadOnlySpan<double> state) =>
        Math.Max(0.0, DryGrams(state)) / GramsPerKilogram / _description.AreaSquareMetres;

    /// <summary>Share of water, by weight, in what it holds; 0 while it holds nothing.</summary>
    public double Moisture(ReadOnlySpan<double> state) => Share(WaterLitres(state), DryGrams(state) / GramsPerKilogram);

    public double DroppedDryKilograms(ReadOnlySpan<double> state) => state[_layout.PressDropped(_index)] / GramsPerKilogram;

    /// <summary>A litre of water counts as a kilogram.</summary>
    public double DroppedWetKilograms(ReadOnlySpan<double> state) => DroppedDryKilograms(state) + state[_layout.PressDropped(_index) + 1];

    /// <summary>Litres of water and grains that have fallen out.</summary>
    public double DroppedLitres(ReadOnlySpan<double> state) => Cake.GrainLitres(state[_layout.PressDropped(_index)]) + state[_layout.PressDropped(_index) + 1];

    /// <summary>Share of water, by weight, in all that has fallen out; 0 while nothing has.</summary>
    public double DroppedMoisture(ReadOnlySpan<double> state) => Share(state[_layout.PressDropped(_index) + 1], DroppedDryKilograms(state));

    private static double Share(double water, double dry) => water + dry > 0.0 ? water / (water + dry) : 0.0;
}
