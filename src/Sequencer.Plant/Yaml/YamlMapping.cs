using System.Collections.Immutable;
using Sequencer.Text;

namespace Sequencer.Plant.Yaml;

/// <summary>Keys and values, in written order; each key is there once.</summary>
public sealed record YamlMapping(SourceSpan Span, ImmutableArray<YamlEntry> Entries) : YamlNode(Span)
{
    internal override string Kind => "a group of keys";

    public YamlEntry? Find(string key)
    {
        foreach (YamlEntry entry in Entries)
        {
            if (string.Equals(entry.Key.Text, key, StringComparison.Ordinal))
            {
                return entry;
            }
        }

        return null;
    }
}
