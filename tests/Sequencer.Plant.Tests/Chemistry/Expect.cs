using Sequencer.Plant.Tests.OutsideChecks;

namespace Sequencer.Plant.Tests.Chemistry;

internal static class Expect
{
    /// <summary>Fails unless the value lies within a band either side of what is expected; says the source of it.</summary>
    public static void Within(double expected, double actual, double band, string source = "see the test")
    {
        Comparison.Note(expected, actual, band);
        Assert.True(Math.Abs(actual - expected) <= band, FormattableString.Invariant($"{actual} against {expected} ({source})"));
    }
}
