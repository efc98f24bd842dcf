using System.Collections.Immutable;
using Sequencer.Text;

namespace Sequencer.Plant.Description;

/// <summary>
/// A vacuum drum filter that turns in a trough, with a coat of filter aid of which a knife takes what stands out beyond it.
/// Values are in metres, seconds, pascals and kilograms.
/// </summary>
/// <param name="Name">its tag</param>
/// <param name="Trough">the tank that it turns in</param>
/// <param name="FiltrateTo">the tank that the filtrate goes to</param>
/// <param name="TurnedBy">the motor that turns it</param>
/// <param name="TurnSeconds">a turn at full speed</param>
/// <param name="AreaSquareMetres">of the whole drum</param>
/// <param name="Submerged">share of it that is under</param>
/// <param name="PipesCarryLitresPerSecond">filtrate at which its pipes and ports take all of the vacuum</param>
/// <param name="VacuumBy">the vacuum pump</param>
/// <param name="DeepestPascals">vacuum with everything shut, below the air's pressure</param>
/// <param name="BareClothPascals">vacuum with the cloth bare</param>
/// <param name="PullsDownInSeconds">time constant of the vacuum</param>
/// <param name="FallsBelowPascals">a vacuum weaker than this holds no coat</param>
/// <param name="Knife">the tank whose level is the knife's distance from the cloth</param>
/// <param name="ClothPerMetre">resistance of the cloth, 1/m</param>
/// <param name="ClothHoldsBack">share of solids that the bare cloth holds back</param>
/// <param name="CoatSquareMetres">permeability of the coat, m2</param>
/// <param name="CoatKilogramsPerCubicMetre">dry filter aid in the coat</param>
/// <param name="CoatGrainKilogramsPerCubicMetre">of the grains of filter aid themselves</param>
/// <param name="ClosesAtMetres">thickness of coat by which e times fewer solids pass</param>
/// <param name="CakeMetresPerKilogram">specific resistance of other solids at 1 Pa</param>
/// <param name="CakeCompressibility">exponent of the pressure in it</param>
/// <param name="CakeKilogramsPerCubicMetre">other solids, dry, in their cake</param>
/// <param name="CakeGrainKilogramsPerCubicMetre">of the grains of other solids themselves</param>
/// <param name="Retained">substances of which what is solid in the water counts as solid here, with the grams of dry solid for each mole</param>
/// <param name="SealWater">of the vacuum pump; null where its temperature tells nothing</param>
/// <param name="Span">where it is described</param>
public sealed record DrumDescription(
    string Name,
    string Trough,
    string FiltrateTo,
    string TurnedBy,
    double TurnSeconds,
    double AreaSquareMetres,
    double Submerged,
    double PipesCarryLitresPerSecond,
    string VacuumBy,
    double DeepestPascals,
    double BareClothPascals,
    double PullsDownInSeconds,
    double FallsBelowPascals,
    string Knife,
    double ClothPerMetre,
    double ClothHoldsBack,
    double CoatSquareMetres,
    double CoatKilogramsPerCubicMetre,
    double CoatGrainKilogramsPerCubicMetre,
    double ClosesAtMetres,
    double CakeMetresPerKilogram,
    double CakeCompressibility,
    double CakeKilogramsPerCubicMetre,
    double CakeGrainKilogramsPerCubicMetre,
    ImmutableArray<(Substance Substance, double GramsPerMole)> Retained,
    SealWaterDescription? SealWater,
    SourceSpan Span);
