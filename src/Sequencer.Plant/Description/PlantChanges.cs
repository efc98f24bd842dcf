using Sequencer.Plant.Yaml;
using Sequencer.Text;

namespace Sequencer.Plant.Description;

/// <summary>Puts other values into a description that was read as YAML, so that its reader checks them as it checks all others.</summary>
public static class PlantChanges
{
    public static YamlMapping Put(YamlMapping description, IEnumerable<PlantChange> changes, DiagnosticBag diagnostics)
    {
        YamlMapping changed = description;
        foreach (PlantChange change in changes)
        {
            changed = Put(changed, change.Place.Value.Split('.'), 0, change, diagnostics);
        }

        return changed;
    }

    /// <summary>The text that stands at a place; null where the place holds none.</summary>
    public static string? Find(YamlMapping description, string place)
    {
        YamlNode? found = description;
        foreach (string key in place.Split('.'))
        {
            found = (found as YamlMapping)?.Find(key)?.Value;
        }

        return (found as YamlScalar)?.Text;
    }

    /// <summary>A last key that the group does not have is added: its reader knows whether it means something there.</summary>
    private static YamlMapping Put(YamlMapping group, string[] keys, int depth, PlantChange change, DiagnosticBag diagnostics)
    {
        string key = keys[depth];
        YamlEntry? entry = group.Find(key);
        if (depth == keys.Length - 1)
        {
            YamlEntry put = new(
                new YamlScalar(change.Place.Span, key, IsQuoted: false),
                new YamlScalar(change.Value.Span, change.Value.Value, IsQuoted: false));
            return group with { Entries = entry is null ? group.Entries.Add(put) : group.Entries.Replace(entry, put) };
        }

        if (entry is { Value: YamlMapping inner })
        {
            return group with { Entries = group.Entries.Replace(entry, entry with { Value = Put(inner, keys, depth + 1, change, diagnostics) }) };
        }

        string before = string.Concat(keys.Take(depth).Select(passed => passed + "."));
        diagnostics.Add(PlantDiagnostics.UnknownName(
            change.Place with { Value = before + key },
            "group of keys",
            group.Entries.Where(known => known.Value is YamlMapping).Select(known => before + known.Key.Text)));
        return group;
    }
}
