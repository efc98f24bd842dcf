using System.Collections.Immutable;
using Sequencer.Language.Programs;
using Sequencer.Language.Rules.Analysis;

namespace Sequencer.Sites.Insight;

/// <summary>Who reads an instrument in one unit, from the program's words.</summary>
/// <param name="Tag">As the unit names it.</param>
/// <param name="Description">What the instrument is.</param>
/// <param name="Interlocks">Interlocks and permissives whose conditions look at it.</param>
/// <param name="Trips">Trips whose conditions look at it.</param>
/// <param name="Others">Latches, alarms, start conditions, votes and confirmations that look at it.</param>
/// <param name="Alone">Those interlocks, permissives and trips that look at no other instrument.</param>
internal sealed record InstrumentUse(
    string Tag,
    string Description,
    ImmutableArray<string> Interlocks,
    ImmutableArray<string> Trips,
    ImmutableArray<string> Others,
    ImmutableArray<string> Alone)
{
    /// <summary>The instruments of one unit, and who on the whole site looks at them.</summary>
    public static ImmutableArray<InstrumentUse> Of(SiteProgram site, UnitProgram unit) =>
    [
        .. unit.AnalogueInputs.Select(input => Of(site, unit, input.Tag, input.Description)),
        .. unit.SwitchInputs.Select(input => Of(site, unit, input.Tag, input.Description)),
    ];

    /// <summary>The tags of the instruments that a condition looks at, those behind a vote included.</summary>
    public static IEnumerable<string> Tags(Condition? condition) => condition is null ? [] : ConditionTree.InputTags(condition).Distinct(StringComparer.Ordinal);

    private static InstrumentUse Of(SiteProgram site, UnitProgram owner, string tag, string description)
    {
        Place[] blocks = [.. site.Units.SelectMany(unit => Blocks(site, unit))];
        Place[] trips = [.. site.Units.SelectMany(unit => unit.Trips.Select(one => new Place(unit, site.NameOf(unit, one.Name), Tags(one.Condition))))];
        Place[] others = [.. site.Units.SelectMany(unit => Readers(site, unit))];
        return new InstrumentUse(
            tag,
            description,
            Names(blocks),
            Names(trips),
            [.. Names(others), .. owner.Outputs.Where(output => output.Confirmation?.On.Tag == tag || output.Confirmation?.Off?.Tag == tag).Select(output => $"confirms {output.Tag}")],
            Names(blocks.Concat(trips).Where(place => place.Tags.Distinct(StringComparer.Ordinal).Count() == 1)));

        ImmutableArray<string> Names(IEnumerable<Place> places) =>
            [.. places.Where(place => place.Tags.Contains(place.Unit == owner ? tag : QualifiedName.Of(owner.Name, tag))).Select(place => place.Name).Distinct(StringComparer.Ordinal)];
    }

    private static IEnumerable<Place> Blocks(SiteProgram site, UnitProgram unit) =>
    [
        .. unit.Interlocks.Select(one => new Place(unit, site.NameOf(unit, one.Name), [.. Tags(one.Condition), .. Tags(one.Release)])),
        .. unit.Permissives.Select(one => new Place(unit, site.NameOf(unit, one.Name), Tags(one.Condition))),
    ];

    private static IEnumerable<Place> Readers(SiteProgram site, UnitProgram unit) =>
    [
        .. unit.Latches.Select(one => new Place(unit, $"latch {site.NameOf(unit, one.Name)}", [.. Tags(one.Set), .. Tags(one.Clear)])),
        .. unit.Alarms.Select(one => new Place(unit, $"alarm {site.NameOf(unit, one.Name)}", Tags(one.Condition))),
        .. unit.StartConditions.Select(one => new Place(unit, $"start of {unit.Name}", Tags(one.Condition))),
    ];

    private sealed record Place(UnitProgram Unit, string Name, IEnumerable<string> Tags);
}
