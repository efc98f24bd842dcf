using System.Collections.Immutable;
using Sequencer.Text;

namespace Sequencer.Plant.Description;

/// <summary>A vertical tank, of one cross-section above what its table of levels says.</summary>
/// <param name="Name">its tag</param>
/// <param name="AreaSquareMetres">cross-section</param>
/// <param name="Levels">of a bottom of another shape: what it holds up to some levels; empty for none</param>
/// <param name="OverflowLitres">volume at which it runs over</param>
/// <param name="HeelLitres">volume below which no outlet draws</param>
/// <param name="StartLitres">volume at the start</param>
/// <param name="StartWater">the supply that it holds at the start</param>
/// <param name="HeatLossSeconds">time constant of cooling to ambient; null for none</param>
/// <param name="AirSeconds">time constant of carbon dioxide between water and air; null for a covered tank</param>
/// <param name="Aeration">by a blower; null where there is none</param>
/// <param name="Mixing">how reagents mix in</param>
/// <param name="Settling">what settles in it; null where nothing is told, and nothing does</param>
/// <param name="TreatsBatches">batches are treated in it, by the unit of its name: figures for a batch are of these</param>
/// <param name="Span">where it is described</param>
public sealed record TankDescription(
    string Name,
    double AreaSquareMetres,
    ImmutableArray<LevelPoint> Levels,
    double OverflowLitres,
    double HeelLitres,
    double StartLitres,
    string StartWater,
    double? HeatLossSeconds,
    double? AirSeconds,
    AerationDescription? Aeration,
    MixingDescription Mixing,
    SettlingDescription? Settling,
    bool TreatsBatches,
    SourceSpan Span);
