namespace Sequencer.Plant.Yaml;

/// <summary>A key with its value.</summary>
public sealed record YamlEntry(YamlScalar Key, YamlNode Value);
