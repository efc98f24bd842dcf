using Sequencer.Plant.Filtration;

namespace Sequencer.Plant.Reaction;

/// <summary>What the coat or cake of a filter is made of: dry solids and grains, kg to a m3 of the layer and of the grains (which is g to a litre).</summary>
internal readonly record struct CakeLayer(double DryDensity, double GrainDensity)
{
    public double Porosity => Dewatering.Porosity(DryDensity, GrainDensity);

    /// <summary>Litres that so many grams take up, pores and all.</summary>
    public double Litres(double grams) => grams / DryDensity;

    /// <summary>Litres of their grains.</summary>
    public double GrainLitres(double grams) => grams / GrainDensity;

    /// <summary>Litres of the pores between them.</summary>
    public double PoreLitres(double grams) => Litres(grams) - GrainLitres(grams);
}
