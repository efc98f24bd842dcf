using System.Collections.Immutable;
using Sequencer.Control.TransitionSystems;

namespace Sequencer.Proof;

/// <summary>The requirement is true in every scan of every run that keeps the assumptions.</summary>
/// <param name="Requirement">The requirement's name.</param>
/// <param name="Invariant">
/// A Boolean over the given system's state variables (its expressions are of a builder of its own):
/// true before the first scan, kept by each scan, and with it the requirement holds in each scan, all
/// three given the variables' ranges and the named assumptions.
/// </param>
/// <param name="Engine">Which engine found it.</param>
/// <param name="Assumptions">Names of the assumptions that the three obligations lean on, in the system's order.</param>
/// <param name="Effort">What the answer cost, in counts.</param>
public sealed record Holds(
    string Requirement,
    Expression Invariant,
    string Engine,
    ImmutableArray<string> Assumptions,
    Effort Effort) : Verdict(Requirement, Effort);
