using Sequencer.Plant.Filtration;
using Sequencer.Plant.Tests.OutsideChecks;
using static Sequencer.Plant.Tests.Chemistry.Expect;

namespace Sequencer.Plant.Tests.Filtration;

/// <summary>What follows from the geometry of a coat and a knife, and from Darcy's law; all computed.</summary>
public sealed class PrecoatTests
{
    [OutsideCheck(Basis.Computed)]
    [Theory]
    [InlineData(100, 10, 0.10, 0.5, 30.0)]
    [InlineData(75, 10, 0.05, 1.0, 21.667)]
    [InlineData(50, 5, 0.25, 0.2, 15.0)]
    [InlineData(150, 10, 0.01, 2.0, 116.667)]
    public void A_coat_lasts_until_it_is_cut_to_its_heel(double thickness, double heel, double perTurn, double turns, double hours) =>
        Within(hours, Precoat.RunHours(thickness, heel, perTurn, turns), 0.001);

    [OutsideCheck(Basis.Computed)]
    [Fact]
    public void The_knife_takes_filter_aid_with_it()
    {
        Within(3.0, Precoat.KnifeAdvance(0.10, 0.5), 1e-12);
        Within(0.90, Precoat.Shaved(0.10, 0.5, 300), 1e-12);
    }

    /// <summary>1 darcy, 90 mm, 60 kPa, 1 mPa s: 2369 L/(m2 h).</summary>
    [OutsideCheck(Basis.Computed)]
    [Fact]
    public void A_clean_coat_lets_water_through() => Within(2369, Precoat.CleanFlux(Precoat.Darcy, 60e3, 1e-3, 0.090) * 3600e3, 2.4);

    /// <summary>1 darcy and 300 kg/m3 are 3.377e9 m/kg.</summary>
    [OutsideCheck(Basis.Computed)]
    [Fact]
    public void Permeability_is_a_specific_resistance() => Within(3.377e9, FilterCake.ResistanceOf(Precoat.Darcy, 300), 3.4e6);
}
