using Sequencer.Plant.Hydraulics;

namespace Sequencer.Plant.Reaction;

/// <summary>What no plant can be in: volumes, temperatures and contents of tanks, and whatever else <see cref="StateTable"/> has bounds of.</summary>
internal sealed class PhysicalBounds(PlantParts parts, StateTable table)
{
    /// <summary>Relative to what is in the tank: a content more negative than rounding explains.</summary>
    private const double NegativeShare = 1e-6;

    /// <summary>
    /// mol or g: what steps may add up to, however little water there is. The error allowed in one is 1e-6, but by the root
    /// mean square of hundreds of values a single one may take twenty times that.
    /// </summary>
    private const double NegativeAmount = 1e-3;

    /// <summary>C; beyond these a tank holds no water (at the pressure of air), with some room for what the errors of steps add up to.</summary>
    private const double Frozen = -1.0;
    private const double Boiling = 105.0;

    /// <summary>mol or g by which the errors of steps may bring a content below nothing. In little water that is more than an equilibrium takes for nothing.</summary>
    public static double MayBeMissing(double litres) => Math.Max(NegativeAmount, NegativeShare * litres);

    /// <summary>The first that is beyond them in a state at a time, s; null where all is as it can be.</summary>
    public PlantFailure? FirstBeyond(ReadOnlySpan<double> state, double time)
    {
        foreach (TankBody tank in parts.Tanks)
        {
            string place = tank.Description.Name;
            double litres = state[parts.Layout.Volume(tank.Index)];
            if (!(litres > 0.0 && litres < tank.Description.OverflowLitres * 1.001))
            {
                return new PlantFailure("balance of volume", place, time, FormattableString.Invariant($"the volume is {litres:G6} L"));
            }

            double celsius = state[parts.Layout.Heat(tank.Index)] / litres;
            if (!(celsius > Frozen && celsius < Boiling))
            {
                return new PlantFailure("balance of heat", place, time, FormattableString.Invariant($"the temperature is {celsius:G6} C"));
            }

            for (int content = 0; content < parts.Contents.Count; content++)
            {
                double amount = state[parts.Layout.Mixed(tank.Index) + content];
                if (!(amount >= -MayBeMissing(litres)))
                {
                    return new PlantFailure($"balance of {parts.Contents.Names[content]}", place, time, FormattableString.Invariant($"the content is {amount:G6}"));
                }
            }
        }

        if (table.FirstBeyond(state) is not (var beyond and >= 0))
        {
            return null;
        }

        StateNumber cannotBe = table[beyond];
        return new PlantFailure(cannotBe.Equation, cannotBe.Place, time, cannotBe.Beyond(state[beyond]));
    }
}
