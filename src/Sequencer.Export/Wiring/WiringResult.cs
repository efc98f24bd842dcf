using System.Collections.Immutable;

namespace Sequencer.Export.Wiring;

/// <summary>What is known about the program around the blocks: whether it hands them what the site declares and brings out what they say.</summary>
public abstract record WiringResult;

/// <summary>Every address, contact, loop and coil is the site's, and nothing else is done between them and the blocks.</summary>
/// <param name="Points">How many signals with an address.</param>
/// <param name="Operated">How many variables the operator's station writes.</param>
/// <param name="Counts">How many loop currents were tried for each reading: all that a word holds.</param>
public sealed record WiredAsDeclared(int Points, int Operated, int Counts) : WiringResult;

/// <summary>What is wired otherwise, each with what it is and what it should be.</summary>
public sealed record WiredOtherwise(ImmutableArray<string> Faults) : WiringResult;

/// <summary>Neither is known. Never to be shown as success.</summary>
public sealed record WiringUndecided(string Reason) : WiringResult;
