using Sequencer.Plant.Description;

namespace Sequencer.Plant.Reaction;

/// <summary>What is on a drum and what its knife has taken, read from a state.</summary>
internal sealed class DrumHolds
{
    private const double GramsPerKilogram = 1000.0;

    private readonly DrumDescription _description;
    private readonly StateLayout _layout;
    private readonly int _index;
    private readonly Solubility _solubility;
    private readonly int _trough;

    public DrumHolds(DrumDescription description, int index, ContentLayout contents, StateLayout layout, Solubility solubility, int trough)
    {
        _description = description;
        _layout = layout;
        _index = index;
        _solubility = solubility;
        _trough = trough;
        FilterAid = contents.FilterAid;
        Coat = new CakeLayer(description.CoatKilogramsPerCubicMetre, description.CoatGrainKilogramsPerCubicMetre);
        Cake = new CakeLayer(description.CakeKilogramsPerCubicMetre, description.CakeGrainKilogramsPerCubicMetre);
        GramsEach = SolidWeights.Of(contents, description.Retained);
    }

    public CakeLayer Coat { get; }

    public CakeLayer Cake { get; }

    /// <summary>Dry grams for each unit of a content that the drum holds back where it is solid; 0 for others.</summary>
    public double[] GramsEach { get; }

    /// <summary>Its place among the contents.</summary>
    public int FilterAid { get; }

    public double CoatMetres(ReadOnlySpan<double> state) => CoatMetresOf(CoatGrams(state));

    /// <summary>How thick so many grams of filter aid lie on it.</summary>
    public double CoatMetresOf(double grams) => grams / GramsPerKilogram / (_description.CoatKilogramsPerCubicMetre * _description.AreaSquareMetres);

    /// <summary>Dry solids other than filter aid on a square metre, kg.</summary>
    public double CakeKilogramsPerSquareMetre(ReadOnlySpan<double> state) => CakeGrams(state) / GramsPerKilogram / _description.AreaSquareMetres;

    public double WaterLitres(ReadOnlySpan<double> state) => state[_layout.Pores(_index)];

    /// <summary>Litres of water and grains that the knife has taken.</summary>
    public double LitresTaken(ReadOnlySpan<double> state)
    {
        int skimmed = _layout.Skimmed(_index);
        return Coat.GrainLitres(state[skimmed]) + Cake.GrainLitres(state[skimmed + 1]) + state[skimmed + 2];
    }

    /// <summary>Litres of water and grains on the drum.</summary>
    public double HeldLitres(ReadOnlySpan<double> state) =>
        state[_layout.Pores(_index)] + Coat.GrainLitres(CoatGrams(state)) + Cake.GrainLitres(CakeGrams(state));

    /// <summary>kg that the knife has taken, wet; a litre of water counts as a kilogram.</summary>
    public double WetKilogramsTaken(ReadOnlySpan<double> state)
    {
        int skimmed = _layout.Skimmed(_index);
        return ((state[skimmed] + state[skimmed + 1]) / GramsPerKilogram) + state[skimmed + 2];
    }

    /// <summary>Share of water, by weight, in all that the knife has taken; 0 while it has taken nothing.</summary>
    public double Moisture(ReadOnlySpan<double> state)
    {
        double wet = WetKilogramsTaken(state);
        return wet > 0.0 ? state[_layout.Skimmed(_index) + 2] / wet : 0.0;
    }

    public double DryKilograms(ReadOnlySpan<double> state) => (CoatGrams(state) + CakeGrams(state)) / GramsPerKilogram;

    /// <summary>Grams of filter aid.</summary>
    public double CoatGrams(ReadOnlySpan<double> state) => state[_layout.Held(_index) + FilterAid];

    /// <summary>Grams of other dry solids.</summary>
    public double CakeGrams(ReadOnlySpan<double> state)
    {
        double grams = 0.0;
        for (int content = 0; content < GramsEach.Length; content++)
        {
            grams += content == FilterAid ? 0.0 : state[_layout.Held(_index) + content] * GramsEach[content];
        }

        return grams;
    }

    /// <summary>What is solid, mol or g, of so much of a content in so many litres of what it draws.</summary>
    public double Solid(int content, double amount, double litres) => _solubility.Solid(_trough, content, amount, litres);

    /// <summary>Grams of filter aid and of other solids that stay on the drum of a litre that is drawn.</summary>
    public (double Aid, double Other) Solids(ReadOnlySpan<double> state, double retention)
    {
        int mixed = _layout.Mixed(_trough);
        double litres = state[_layout.Volume(_trough)];
        double other = 0.0;
        for (int content = 0; content < GramsEach.Length; content++)
        {
            if (GramsEach[content] > 0.0 && content != FilterAid)
            {
                other += Math.Max(0.0, Solid(content, state[mixed + content], litres)) * GramsEach[content];
            }
        }

        return (retention * Math.Max(0.0, state[mixed + FilterAid]) / litres, retention * other / litres);
    }
}
