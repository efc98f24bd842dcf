using System.Collections.Immutable;

namespace Sequencer.Plant.Description;

/// <summary>A solid that a plant description may let form, the solid of the chemical system that it is, and its formula.</summary>
public sealed record Precipitate(string Name, string Solid, string Formula)
{
    public static ImmutableArray<Precipitate> All { get; } =
    [
        new("ferrihydrite", "Ferrihydrite", "Fe(OH)3"),
        new("gypsum", "Gypsum", "CaSO4.2H2O"),
        new("calcite", "Calcite", "CaCO3"),
        new("chromium_hydroxide", "Chromium_hydroxide", "Cr(OH)3"),
        new("aluminium_hydroxide", "Al(OH)3(am)", "Al(OH)3"),
        new("cadmium_carbonate", "Otavite", "CdCO3"),
        new("cadmium_hydroxide", "Cd(OH)2", "Cd(OH)2"),
        new("calcium_fluoride", "Fluorite", "CaF2"),
        new("calcium_phosphate", "CaHPO4:2H2O", "CaHPO4.2H2O"),
        new("copper_carbonate", "Malachite", "Cu2(OH)2CO3"),
        new("copper_hydroxide", "Cu(OH)2", "Cu(OH)2"),
        new("ferric_phosphate", "Strengite", "FePO4.2H2O"),
        new("ferrous_carbonate", "Siderite", "FeCO3"),
        new("ferrous_hydroxide", "Fe(OH)2", "Fe(OH)2"),
        new("lead_carbonate", "Cerussite", "PbCO3"),
        new("lead_hydroxide", "Pb(OH)2", "Pb(OH)2"),
        new("magnesium_hydroxide", "Brucite", "Mg(OH)2"),
        new("nickel_carbonate", "NiCO3", "NiCO3"),
        new("nickel_hydroxide", "Ni(OH)2", "Ni(OH)2"),
        new("zinc_carbonate", "Smithsonite", "ZnCO3"),
        new("zinc_hydroxide", "Zn(OH)2(am)", "Zn(OH)2"),
    ];

    public static Precipitate? OfSolid(string solid) => All.FirstOrDefault(known => string.Equals(known.Solid, solid, StringComparison.Ordinal));
}
