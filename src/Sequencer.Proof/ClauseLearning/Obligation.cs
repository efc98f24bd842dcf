using System.Collections.Immutable;

namespace Sequencer.Proof.ClauseLearning;

/// <summary>
/// A cube that must be kept out of a frame because it leads to a failure: by <see cref="Inputs"/>, its
/// <see cref="Witness"/> (one state in it) reaches the next cube, or fails where there is none.
/// <see cref="Exact"/> are the integer states whose very values the witness needed for that; without
/// any, every state of the cube does the same.
/// </summary>
internal sealed record Obligation(
    Cube Cube,
    ImmutableArray<long> Witness,
    ImmutableArray<long> Inputs,
    IReadOnlySet<int> Exact,
    Obligation? Next);
