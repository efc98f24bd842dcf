using Sequencer.Plant.Chemistry;

namespace Sequencer.Plant.Tests.Chemistry;

public sealed class ReactionTableTests
{
    [Theory]
    [InlineData("component | Cu+2 | quadratic | l.1", "`quadratic` is no equation of activity")]
    [InlineData("aqueous | Ca+2 + H2O = CaOH+2 + H+ | -12 | 0 | davies | l.1", "the charge does not balance")]
    [InlineData("aqueous | Ca+2 + H2O | -12 | 0 | davies | l.1", "it needs one ` = `")]
    [InlineData("aqueous | Ca+2 + H2O = CaOH+ + H+ | minus twelve | 0 | davies | l.1", "minus twelve")]
    [InlineData("aqueous | H2O = OH- + H+ | -14 | analytic 1 2 3 | davies | l.1", "6 terms, not 3")]
    [InlineData("aqueous | Zn+2 + H2O = ZnOH+ + H+ | -8.997 | 0 | davies | l.1", "`ZnOH+` is made of `Zn+2`, which is no component")]
    [InlineData("solid | Lime | CaO + 2 H+ = Ca+2 | 32.7", "row `solid | Lime")]
    [InlineData("gas | CO2", "`gas` is none of component, aqueous, solid")]
    public void A_wrong_row_is_refused_and_named(string row, string expected) =>
        Assert.Contains(expected, Assert.Throws<FormatException>(() => Tables.Minteq.With(row)).Message, StringComparison.Ordinal);

    [Fact]
    public void A_later_row_replaces_an_earlier_one_in_its_place()
    {
        ChemicalSystem changed = Tables.Minteq.With("aqueous | H2O = OH- + H+ | -14 | 56.4 | davies | another source");
        int place = Tables.Minteq.SpeciesIndex("OH-");
        Assert.Equal(Tables.Minteq.Species.Length, changed.Species.Length);
        Assert.Equal(-14, changed.Species[place].Constant.Log10At25);
        Assert.Equal(-13.997, Tables.Minteq.Species[place].Constant.Log10At25);
    }

    [Fact]
    public void A_restricted_system_keeps_only_what_its_components_make()
    {
        ChemicalSystem system = Tables.Minteq.Restrict("CO3-2", "Ca+2");
        Assert.Equal(["CO3-2", "Ca+2"], system.Components.Select(component => component.Name));
        Assert.Equal(["Portlandite", "Calcite"], system.Solids.Select(solid => solid.Name));
        Assert.Equal(["H+", "CO3-2", "Ca+2", "OH-", "CaOH+", "HCO3-", "H2CO3", "CaHCO3+", "CaCO3"], system.Species.Select(species => species.Name));
    }

    [Fact]
    public void An_unknown_name_is_refused_with_the_names_there_are() =>
        Assert.Contains("Gypsum", Assert.Throws<ArgumentException>(() => Tables.Minteq.SolidIndex("Plaster")).Message, StringComparison.Ordinal);
}
