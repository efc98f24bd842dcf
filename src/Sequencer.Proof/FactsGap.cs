using System.Collections.Immutable;
using Sequencer.Control.TransitionSystems;

namespace Sequencer.Proof;

/// <summary>Facts that hold together up to a scan that may break some of those that define states, or what is required.</summary>
/// <param name="Facts">Those that are taken for granted before the scan; what defines no state is kept as long as they all hold.</param>
/// <param name="Broken">Of these the ones that define a state and that some scan breaks.</param>
/// <param name="Required">The parts of the requirement that do not follow from the facts.</param>
internal sealed record FactsGap(ImmutableArray<Expression> Facts, ImmutableArray<Expression> Broken, ImmutableArray<Expression> Required);
