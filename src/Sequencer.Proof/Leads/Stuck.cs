using System.Collections.Immutable;
using Sequencer.Proof.ClauseLearning;

namespace Sequencer.Proof.Leads;

/// <summary>
/// Where a lead could not be followed: the obligation whose cube was entered in the state
/// <see cref="Entry"/> and could only be followed as far as <see cref="End"/>.
/// </summary>
internal sealed record Stuck(Obligation At, ImmutableArray<long> Entry, ImmutableArray<long> End);
