using Sequencer.Proof.Remembering;

namespace Sequencer.Sites.Tests.Obligations;

internal sealed class Memory : IProofMemory
{
    public Dictionary<string, string> Texts { get; } = [];

    public string? Find(string key) => Texts.GetValueOrDefault(key);

    public void Keep(string key, string text) => Texts[key] = text;
}
