using Sequencer.Plant.Filtration;
using Sequencer.Plant.Tests.OutsideChecks;
using static Sequencer.Plant.Tests.Chemistry.Expect;

namespace Sequencer.Plant.Tests.Filtration;

/// <summary>G: worked companion of Geankoplis, Transport Processes and Unit Operations, chapter 14.</summary>
public sealed class RotaryDrumTests
{
    private const double Viscosity = 0.8937e-3;

    /// <summary>alpha = 4.37e9 dp^0.3 at 67 kPa, a slurry with 0.191 of solids, 2 kg of wet cake for a dry one. Source: G, example 14.2-4, p. 814: 308.1 kg/m3 and 1.225e11 m/kg.</summary>
    private static readonly FilterCake Cake = new(FilterCake.ResistanceUnder(67e3, 4.37e9, 0.3), FilterCake.DryPerFiltrateOf(996.9, 0.191, 2.0));

    [OutsideCheck(Basis.Published)]
    [Fact]
    public void A_compressible_cake_is_tighter_under_pressure()
    {
        Within(1.2255e11, Cake.SpecificResistance, 1.2255e8);
        Within(308.1, Cake.DryPerFiltrate, 0.31);
    }

    /// <summary>0.778 kg/s of slurry, a turn of 250 s of which 0.33 is under, the medium left out. Source: G, example 14.2-4, p. 814: 4.823e-4 m3/s and 6.66 m2.</summary>
    [OutsideCheck(Basis.Published)]
    [Fact]
    public void The_area_of_a_drum_follows_from_its_slurry()
    {
        double filtrate = 0.778 * 0.191 / Cake.DryPerFiltrate;
        Within(4.823e-4, filtrate, 0.002 * 4.823e-4);
        Within(6.66, filtrate / RotaryDrum.Flux(Cake, Viscosity, 0.0, 67e3, 0.33, 250), 0.002 * 6.66);
    }

    /// <summary>2.20 m2, 62 kPa, a turn of 300 s, 0.28 under. Source: set problem, answer computed.</summary>
    [OutsideCheck(Basis.Computed)]
    [Fact]
    public void A_small_drum_gives_little()
    {
        FilterCake cake = new(1.197e11, FilterCake.DryPerFiltrateOf(996.6, 0.191, 2.0));
        Within(1.304e-4, 2.20 * RotaryDrum.Flux(cake, Viscosity, 0.0, 62e3, 0.28, 300), 0.002 * 1.304e-4);
    }

    /// <summary>A medium of no resistance changes nothing, and one that is all the resistance lets Darcy's flow through while it is under: both are limits of the equation.</summary>
    [OutsideCheck(Basis.Computed)]
    [Fact]
    public void The_medium_counts_between_its_limits()
    {
        double without = RotaryDrum.Flux(Cake, Viscosity, 0.0, 67e3, 0.33, 250);
        Within(without, RotaryDrum.Flux(Cake, Viscosity, 1.0, 67e3, 0.33, 250), 1e-6 * without);
        double alone = 67e3 * 0.33 / (Viscosity * 1e16);
        Within(alone, RotaryDrum.Flux(Cake, Viscosity, 1e16, 67e3, 0.33, 250), 1e-3 * alone);
    }
}
