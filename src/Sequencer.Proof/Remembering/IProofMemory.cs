namespace Sequencer.Proof.Remembering;

/// <summary>
/// Invariants found before, by the fingerprint of all that a requirement can depend on. Nothing about what it gives back is
/// trusted: it is read as a guess and checked like every invariant.
/// </summary>
public interface IProofMemory
{
    /// <summary>The text kept under the fingerprint; null where there is none, or it cannot be read.</summary>
    string? Find(string fingerprint);

    /// <summary>Keeps a text under the fingerprint; where it cannot, it does nothing.</summary>
    void Keep(string fingerprint, string text);
}
