namespace Sequencer.Sites.Proposing;

/// <summary>What is proposed for one broken requirement; without a candidate none was found.</summary>
internal sealed record Proposal(BrokenRequirement Broken, Candidate? Candidate, LoadedSite? Mended, Shown? Shown, Tried Tried);
