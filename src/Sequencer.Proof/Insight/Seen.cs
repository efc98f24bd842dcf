namespace Sequencer.Proof.Insight;

/// <summary>How often a fact is so, over all the scans that a question speaks of.</summary>
public enum Seen
{
    Never,
    Sometimes,
    Always,
}
