using System.Collections.Immutable;

namespace Sequencer.Plant.Description;

/// <summary>What settles in a tank while nobody stirs it.</summary>
/// <param name="FlocGramsPerLitre">dry solids in a litre of floc, its water included</param>
/// <param name="GrainKilogramsPerCubicMetre">of the dry solids themselves</param>
/// <param name="FlocMetres">size of flocs in a shear of 50 1/s</param>
/// <param name="BedGramsPerLitre">dry solids in a litre of what has settled</param>
/// <param name="BreakingSeconds">K_B of flocculation</param>
/// <param name="Retained">substances of which what is solid in the water counts as solid here, with the grams of dry solid for each mole</param>
public sealed record SettlingDescription(
    double FlocGramsPerLitre,
    double GrainKilogramsPerCubicMetre,
    double FlocMetres,
    double BedGramsPerLitre,
    double BreakingSeconds,
    ImmutableArray<(Substance Substance, double GramsPerMole)> Retained);
