namespace Sequencer.Plant.Tests.OutsideChecks;

/// <summary>A value that was expected, the one that came out, and the band allowed either side.</summary>
internal readonly record struct Comparison(double Expected, double Ours, double Band)
{
    [ThreadStatic]
    private static List<Comparison>? kept;

    /// <summary>How much of its band it takes; one that allows nothing takes all or none of it.</summary>
    public double Share => Band > 0.0 ? Math.Abs(Ours - Expected) / Band : Ours == Expected ? 0.0 : double.PositiveInfinity;

    /// <summary>Kept, where somebody listens.</summary>
    public static void Note(double expected, double ours, double band) => kept?.Add(new Comparison(expected, ours, band));

    /// <summary>What a test compares while it runs.</summary>
    public static IReadOnlyList<Comparison> During(Action test)
    {
        kept = [];
        try
        {
            test();
            return kept;
        }
        finally
        {
            kept = null;
        }
    }
}
