using System.Collections.Immutable;
using Sequencer.Text;

namespace Sequencer.Plant.Description;

/// <summary>A reagent in its store. Lime is a slurry: solid calcium hydroxide that dissolves in the tank.</summary>
/// <param name="Name">as the program names it</param>
/// <param name="Dissolved">what a litre holds in solution</param>
/// <param name="LimeMolPerLitre">solid calcium hydroxide in a litre of slurry; 0 for a solution</param>
/// <param name="LimeDissolvesInSeconds">time constant of dissolving in water far from saturated</param>
/// <param name="FilterAidGramsPerLitre">dry filter aid in a litre: of a powder, in a litre of its grains</param>
/// <param name="StirredBy">the agitator that keeps the slurry even; null where none is needed</param>
/// <param name="Celsius">its temperature</param>
/// <param name="StoreLitres">how much the store holds at the start</param>
/// <param name="Span">where it is described</param>
public sealed record ReagentDescription(
    string Name,
    ImmutableArray<Amount> Dissolved,
    double LimeMolPerLitre,
    double LimeDissolvesInSeconds,
    double FilterAidGramsPerLitre,
    string? StirredBy,
    double Celsius,
    double StoreLitres,
    SourceSpan Span);
