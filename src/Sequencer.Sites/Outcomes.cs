namespace Sequencer.Sites;

internal static class Outcomes
{
    /// <summary>The outcome of several parts: not done beats fails beats undecided beats holds.</summary>
    public static Outcome Worst(params IEnumerable<Outcome> outcomes) => outcomes.Aggregate(Outcome.Holds, static (worst, next) =>
        Weight(next) > Weight(worst) ? next : worst);

    private static int Weight(Outcome outcome) => outcome switch
    {
        Outcome.Holds => 0,
        Outcome.Undecided => 1,
        Outcome.Fails => 2,
        _ => 3,
    };
}
