namespace Sequencer.Plant.Yaml;

/// <summary>How much a YAML file may hold; a larger one is reported, never half read.</summary>
public static class YamlLimits
{
    /// <summary>1 MiB of characters: a thousand times a site's file, little enough to hold several times over.</summary>
    public const int Characters = 1024 * 1024;

    /// <summary>Groups within groups; the files described in spec/ need six.</summary>
    public const int Depth = 32;

    /// <summary>Values in all, keys included.</summary>
    public const int Nodes = 100_000;
}
