using Sequencer.Plant.Filtration;
using Sequencer.Plant.Tests.OutsideChecks;
using static Sequencer.Plant.Tests.Chemistry.Expect;

namespace Sequencer.Plant.Tests.Filtration;

/// <summary>G: worked companion of Geankoplis, Transport Processes and Unit Operations, chapter 14.</summary>
public sealed class RotaryDrumTests
{
    private const double Viscosity = 0.8937e-3;

    /// <summary>alpha = 4.37e9 dp^0.3 at 67 kPa, 308.1 kg of dry cake for each m3 of filtrate. Source: G, example 14.2-4, p. 814.</summary>
    private static readonly FilterCake Cake = new(FilterCake.ResistanceUnder(67e3, 4.37e9, 0.3), 308.1);

    /// <summary>alpha = 4.37e9 dp^0.3 at 67 kPa is 1.225e11 m/kg. Source: G, example 14.2-4, p. 814.</summary>
    [OutsideCheck(Basis.Published)]
    [Fact]
    public void A_compressible_cake_is_tighter_under_pressure() => Within(1.2255e11, Cake.SpecificResistance, 1.2255e8);

    /// <summary>A coat of 1 darcy with 300 kg/m3 resists 3.377e9 m/kg: alpha = 1 / (k rho), computed.</summary>
    [OutsideCheck(Basis.Computed)]
    [Fact]
    public void Permeability_is_a_specific_resistance() => Within(3.377e9, FilterCake.ResistanceOf(9.869233e-13, 300), 3.4e6);

    /// <summary>A turn of 250 s of which 0.33 is under, the medium left out: 4.823e-4 m3/s take 6.66 m2. Source: G, example 14.2-4, p. 814.</summary>
    [OutsideCheck(Basis.Published)]
    [Fact]
    public void The_area_of_a_drum_follows_from_its_filtrate() =>
        Within(6.66, 4.823e-4 / RotaryDrum.Flux(Cake, Viscosity, 0.0, 67e3, 0.33, 250), 0.002 * 6.66);

    /// <summary>A medium of no resistance changes nothing, and one that is all the resistance lets Darcy's flow through while it is under: both are limits of the equation.</summary>
    [OutsideCheck(Basis.Computed)]
    [Fact]
    public void The_medium_counts_between_its_limits()
    {
        double without = RotaryDrum.Flux(Cake, Viscosity, 0.0, 67e3, 0.33, 250);
        Within(without, RotaryDrum.Flux(Cake, Viscosity, 1.0, 67e3, 0.33, 250), 1e-6 * without);
        double alone = 67e3 * 0.33 / (Viscosity * 1e16);
        Within(alone, RotaryDrum.Flux(Cake, Viscosity, 1e16, 67e3, 0.33, 250), 1e-3 * alone);
        double clean = 67e3 * 0.33 / (Viscosity * 1e10);
        Within(clean, RotaryDrum.Flux(Cake with { DryPerFiltrate = 1e-15 }, Viscosity, 1e10, 67e3, 0.33, 250), 1e-9 * clean);
    }
}
