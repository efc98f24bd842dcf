using System.Collections.Immutable;

namespace Sequencer.Sites.Tests.Variants.Guided;

/// <summary>What a guided run saw.</summary>
/// <param name="Seed">Gives the same run again.</param>
/// <param name="Scans">How many were run, those that an assumption forbade among them.</param>
/// <param name="Broken">The requirements that were broken, in the system's order.</param>
/// <param name="Reached">How many of the goals were reached: steps at work, transitions taken.</param>
/// <param name="Goals">How many there are.</param>
/// <param name="Places">States that it kept to begin from.</param>
internal sealed record GuidedResult(int Seed, long Scans, ImmutableArray<GuidedBreak> Broken, int Reached, int Goals, int Places);
