namespace Sequencer.Proof;

/// <summary>
/// What the prover says of one requirement: <see cref="Holds"/>, <see cref="Fails"/> or <see cref="Undecided"/>.
/// </summary>
/// <param name="Requirement">The requirement's name.</param>
/// <param name="Effort">What the answer cost, in counts.</param>
public abstract record Verdict(string Requirement, Effort Effort);
