namespace Sequencer.Spec.Tests;

/// <summary>Blocks of YAML: what kind of description they are, read by the reader of that kind.</summary>
internal static class YamlBlocks
{
    public static void Check(FencedBlock block) => Assert.Fail($"{block}: no reader for this kind is tied in yet");
}
