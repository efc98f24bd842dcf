using System.Collections.Immutable;

namespace Sequencer.Plant.Reaction;

/// <summary>mol/(L s) from what a litre holds of the first and of the second substance (mol) and its pH.</summary>
internal delegate double ReactionRate(double first, double second, double ph);

/// <summary>A reaction between dissolved substances.</summary>
/// <param name="First">content without which there is no reaction</param>
/// <param name="Second">the other one; -1 where the first reacts with water alone</param>
/// <param name="DependsOnPh">false: the rate is asked for with no pH</param>
/// <param name="Changes">mol of each content that one mol of the reaction makes, less than none of what it takes</param>
/// <param name="Rate">how fast</param>
internal sealed record WaterReaction(int First, int Second, bool DependsOnPh, ImmutableArray<(int Content, double Moles)> Changes, ReactionRate Rate);
