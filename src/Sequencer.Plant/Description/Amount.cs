namespace Sequencer.Plant.Description;

/// <summary>How much of a dissolved substance a water or reagent holds, mol/L.</summary>
public sealed record Amount(Substance Substance, double MolPerLitre);
