using Sequencer.Plant.Description;
using Sequencer.Plant.Filtration;

namespace Sequencer.Plant.Reaction;

/// <summary>Litres of water in coat and cake: in each if all of it were as at the knife, and on the drum as a whole.</summary>
internal readonly record struct LayerWater(double CoatAtKnife, double CakeAtKnife, double OnDrum)
{
    /// <summary>kg/m2 of cake by which e times less of the coat behind it is open to the air (our own choice).</summary>
    private const double SealsAt = 0.01;

    /// <summary>
    /// The water of coat and cake: what reaches the knife has drained since it left the bath, the drum as a whole is full where it is under and
    /// elsewhere has drained for half as long (our own simplification).
    /// </summary>
    /// <param name="description">The drum.</param>
    /// <param name="holds">What is on it.</param>
    /// <param name="cloth">What its cloth, coat and cake let through.</param>
    /// <param name="pressure">Below the air's, Pa.</param>
    /// <param name="viscosity">Of the water, Pa s.</param>
    /// <param name="turnSeconds">What a turn takes.</param>
    /// <param name="state">The plant's.</param>
    public static LayerWater Of(
        DrumDescription description, DrumHolds holds, DrumCoat cloth, double pressure, double viscosity, double turnSeconds, ReadOnlySpan<double> state)
    {
        double dry = 1.0 - description.Submerged;
        double drained = dry * turnSeconds;
        double coat = holds.CoatMetres(state);
        double cake = Math.Max(0.0, holds.CakeKilogramsPerSquareMetre(state));
        double sealing = 1.0 - Math.Exp(-cake / SealsAt);
        double cakePermeability = pressure > 0.0 ? FilterCake.PermeabilityOf(cloth.CakeResistance(pressure), holds.Cake.DryDensity) : 0.0;
        double coatPores = holds.Coat.PoreLitres(holds.CoatGrams(state));
        double cakePores = holds.Cake.PoreLitres(holds.CakeGrams(state));
        (double coatAtKnife, double cakeAtKnife) = Full(drained);
        (double coatHalfway, double cakeHalfway) = Full(0.5 * drained);
        return new LayerWater(
            coatAtKnife * coatPores,
            cakeAtKnife * cakePores,
            ((description.Submerged + (dry * coatHalfway)) * coatPores) + ((description.Submerged + (dry * cakeHalfway)) * cakePores));

        (double Coat, double Cake) Full(double seconds)
        {
            double ofCake = cakePermeability > 0.0
                ? Dewatering.Saturation(cakePermeability, holds.Cake.Porosity, cake / holds.Cake.DryDensity, pressure, viscosity, seconds)
                : 1.0;
            double open = Dewatering.Saturation(description.CoatSquareMetres, holds.Coat.Porosity, coat, pressure, viscosity, seconds);
            return (open + ((1.0 - open) * ofCake * sealing), ofCake);
        }
    }
}
