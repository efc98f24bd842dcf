using System.Collections.Immutable;
using Sequencer.Control.TransitionSystems;

namespace Sequencer.Lowering.Obligations;

/// <summary>How long a transient state has lasted, as it is stored, in scans up to the most that it may; and what helps to prove that.</summary>
internal sealed record TransientTime(Expression Age, long Most, ImmutableArray<Expression> Guesses);
