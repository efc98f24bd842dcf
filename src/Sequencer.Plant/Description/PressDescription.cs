using System.Collections.Immutable;
using Sequencer.Text;

namespace Sequencer.Plant.Description;

/// <summary>A filter press: chambers between cloths that a pump fills with slurry. Values are in litres, metres, seconds, pascals and kilograms.</summary>
/// <param name="Name">its tag</param>
/// <param name="From">the tank that it is fed from</param>
/// <param name="FiltrateTo">the tank that the filtrate goes to</param>
/// <param name="Through">pumps and valves that feed it, all of which must run or be open</param>
/// <param name="FeedLitresPerSecond">feed without pressure, everything open</param>
/// <param name="StallsAtPascals">pressure at which the pump gives no more</param>
/// <param name="AreaSquareMetres">of all cloths</param>
/// <param name="ChambersLitres">that its chambers hold</param>
/// <param name="ClothPerMetre">resistance of the cloth, 1/m</param>
/// <param name="ClothHoldsBack">share of solids that the bare cloth holds back</param>
/// <param name="ClosesAtMetres">thickness of cake by which e times fewer solids pass</param>
/// <param name="CakeMetresPerKilogram">specific resistance of the solids at 1 Pa</param>
/// <param name="CakeCompressibility">exponent of the pressure in it</param>
/// <param name="CakeKilogramsPerCubicMetre">dry solids in the cake as it is filtered</param>
/// <param name="GrainKilogramsPerCubicMetre">of the grains themselves</param>
/// <param name="Retained">substances of which what is solid in the water counts as solid here, with the grams of dry solid for each mole</param>
/// <param name="Squeeze">by membranes; null where there are none</param>
/// <param name="OpenedBy">the motor or valve that opens it: what is in it falls out</param>
public sealed record PressDescription(
    string Name,
    string From,
    string FiltrateTo,
    ImmutableArray<string> Through,
    double FeedLitresPerSecond,
    double StallsAtPascals,
    double AreaSquareMetres,
    double ChambersLitres,
    double ClothPerMetre,
    double ClothHoldsBack,
    double ClosesAtMetres,
    double CakeMetresPerKilogram,
    double CakeCompressibility,
    double CakeKilogramsPerCubicMetre,
    double GrainKilogramsPerCubicMetre,
    ImmutableArray<(Substance Substance, double GramsPerMole)> Retained,
    SqueezeDescription? Squeeze,
    string OpenedBy,
    SourceSpan Span);
