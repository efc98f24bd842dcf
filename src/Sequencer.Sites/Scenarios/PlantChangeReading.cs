using System.Collections.Immutable;
using Sequencer.Plant.Description;
using Sequencer.Plant.Yaml;

namespace Sequencer.Sites.Scenarios;

/// <summary>Reads what a scenario has otherwise than the plant's description: places and values below <c>plant</c>.</summary>
internal static class PlantChangeReading
{
    public static IEnumerable<PlantChange> Each(YamlFields file)
    {
        if (file.OptionalFields("plant") is not YamlFields plant)
        {
            yield break;
        }

        foreach (Placed<string> place in plant.Keys().ToImmutableArray())
        {
            yield return new PlantChange(place, plant.RequiredText(place.Value));
        }
    }
}
