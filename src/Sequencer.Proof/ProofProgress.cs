namespace Sequencer.Proof;

/// <summary>Where a decision stands: the engine at work and how deep it is (scans or frames).</summary>
public sealed record ProofProgress(string Requirement, string Engine, int Depth);
