using System.Collections.Immutable;

namespace Sequencer.Plant.Description;

/// <summary>
/// Something dissolved that a plant description may name, and the component of the chemical system
/// that it is counted as. Hydrogen and hydroxide are not named: the balance of charge finds them, so
/// sulphuric acid is its sulphate and caustic soda its sodium. Chromate is all chromium(VI), chromium all chromium(III),
/// sulphite all sulphur(IV), hypochlorite all free chlorine, ammonia all of NH3 and NH4+, iron all iron(III), whatever they are bound to.
/// </summary>
public sealed record Substance(string Name, string Component)
{
    public static ImmutableArray<Substance> All { get; } =
    [
        new("acetate", "Acetate-"),
        new("aluminium", "Al+3"),
        new("ammonia", "NH4+"),
        new("cadmium", "Cd+2"),
        new("calcium", "Ca+2"),
        new("carbonate", "CO3-2"),
        new("chloride", "Cl-"),
        new("chromate", "CrO4-2"),
        new("chromium", "Cr(OH)2+"),
        new("copper", "Cu+2"),
        new("cyanate", "OCN-"),
        new("cyanide", "Cyanide-"),
        new("cyanogen_chloride", "CNCl"),
        new("ferrous_iron", "Fe+2"),
        new("fluoride", "F-"),
        new("hypochlorite", "OCl-"),
        new("iron", "Fe+3"),
        new("lead", "Pb+2"),
        new("magnesium", "Mg+2"),
        new("nickel", "Ni+2"),
        new("nitrate", "NO3-"),
        new("phosphate", "PO4-3"),
        new("potassium", "K+"),
        new("sodium", "Na+"),
        new("sulphate", "SO4-2"),
        new("sulphite", "SO3-2"),
        new("zinc", "Zn+2"),
    ];

    public static Substance? Find(string name) =>
        All.FirstOrDefault(substance => string.Equals(substance.Name, name, StringComparison.Ordinal));
}
