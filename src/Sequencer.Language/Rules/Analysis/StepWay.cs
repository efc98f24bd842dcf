using System.Collections.Immutable;
using Sequencer.Language.Programs;

namespace Sequencer.Language.Rules.Analysis;

/// <summary>From steps to steps, by their places; by a transition or (null) by the limit of the one step it leaves.</summary>
internal sealed record StepWay(ImmutableArray<int> From, ImmutableArray<int> To, Transition? Transition);
