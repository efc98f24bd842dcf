using System.Collections.Immutable;

namespace Sequencer.Sites.Tests.Variants.Guided;

/// <summary>What became of a variant.</summary>
/// <param name="Class">One of the classes.</param>
/// <param name="What">The codes of the checker, or the requirements that tell.</param>
/// <param name="Disagreements">Requirements that the prover says hold and a run broke, with the run; and failing runs that do not replay.</param>
internal sealed record Judgement(string Class, string What, ImmutableArray<string> Disagreements)
{
    public const string Refused = "refused by the checker";

    public const string Broken = "broken by random runs, and refuted by the prover";

    public const string Refuted = "refuted by the prover only; its run replays";

    public const string Proved = "every requirement proved, anew where something changed that it depends on, and broken by no random run";

    public const string Same = "the same for every requirement: nothing changed that one depends on; broken by no random run";

    public const string BrokenUndecided = "broken by random runs, and undecided by the prover in its time";

    public const string Undecided = "undecided by the prover in its time, and broken by no random run";

    public static ImmutableArray<string> Classes { get; } = [Refused, Broken, Refuted, Proved, Same, BrokenUndecided, Undecided];
}
