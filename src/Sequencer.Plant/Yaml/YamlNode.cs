using Sequencer.Text;

namespace Sequencer.Plant.Yaml;

/// <summary>One value of a YAML file with the exact place it was written at.</summary>
public abstract record YamlNode(SourceSpan Span)
{
    /// <summary>What the value is, in words for a message.</summary>
    internal abstract string Kind { get; }
}
