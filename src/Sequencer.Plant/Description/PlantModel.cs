using System.Collections.Immutable;

namespace Sequencer.Plant.Description;

/// <summary>
/// A plant as described, checked: each name is there once and each reference leads to a thing of
/// the right kind. Values are in litres, seconds, metres, mol/L and degrees Celsius.
/// </summary>
public sealed record PlantModel(
    string Name,
    double AmbientCelsius,
    ImmutableArray<string> Precipitates,
    ReactionTimes Reactions,
    ImmutableArray<SupplyDescription> Supplies,
    ImmutableArray<ReagentDescription> Reagents,
    ImmutableArray<TankDescription> Tanks,
    ImmutableArray<DriveDescription> Drives,
    ImmutableArray<LineDescription> Lines,
    ImmutableArray<DosingLineDescription> DosingLines,
    ImmutableArray<SampleLoopDescription> SampleLoops,
    ImmutableArray<DrumDescription> Drums,
    ImmutableArray<PressDescription> Presses,
    ImmutableArray<TransmitterDescription> Transmitters,
    ImmutableArray<SwitchDescription> Switches,
    ImmutableArray<HandSwitchDescription> HandSwitches)
{
    /// <summary>Substances of which some filter or settling tank holds what is solid, with the grams of dry solid for each mole.</summary>
    internal ImmutableArray<(Substance Substance, double GramsPerMole)> Retained =>
    [
        .. Drums.SelectMany(drum => drum.Retained)
            .Concat(Presses.SelectMany(press => press.Retained))
            .Concat(Tanks.SelectMany(tank => tank.Settling?.Retained ?? []))
            .DistinctBy(retained => retained.Substance),
    ];

    /// <summary>An instrument sees this in the tank, or in what a sample loop brings from there.</summary>
    internal bool Measures(Measured what, string tank)
    {
        HashSet<string> places = [tank, .. SampleLoops.Where(loop => loop.From == tank).Select(loop => loop.Name)];
        return Transmitters.Any(one => one.Measures == what && places.Contains(one.In)) || Switches.Any(one => one.Measures == what && places.Contains(one.In));
    }
}
