namespace Sequencer.Proof.Remembering;

/// <summary>
/// Invariants found before, by the fingerprint of all that a requirement can depend on, and ways found before, by the system's
/// name. Nothing about what it gives back is trusted: an invariant is checked like every guess, and a way is played.
/// </summary>
public interface IProofMemory
{
    /// <summary>The text kept under the key; null where there is none, or it cannot be read.</summary>
    string? Find(string key);

    /// <summary>Keeps a text under the key; where it cannot, it does nothing.</summary>
    void Keep(string key, string text);
}
