namespace Sequencer.Plant.Tests.OutsideChecks;

/// <summary>A value that was expected, the one that came out, and the band allowed either side.</summary>
internal readonly record struct Comparison(double Expected, double Ours, double Band)
{
    [ThreadStatic]
    private static List<Comparison>? kept;

    [ThreadStatic]
    private static bool played;

    /// <summary>How much of its band it takes; one that allows nothing takes all or none of it.</summary>
    public double Share => Band > 0.0 ? Math.Abs(Ours - Expected) / Band : Ours == Expected ? 0.0 : double.PositiveInfinity;

    /// <summary>Kept, where somebody listens.</summary>
    public static void Note(double expected, double ours, double band) => kept?.Add(new Comparison(expected, ours, band));

    /// <summary>A plant has been set going.</summary>
    public static void NotePlay() => played = true;

    /// <summary>What a test compares while it runs, and whether it has set a plant going.</summary>
    public static (IReadOnlyList<Comparison> Comparisons, bool IsPlayed) During(Action test)
    {
        kept = [];
        played = false;
        try
        {
            test();
            return (kept, played);
        }
        finally
        {
            kept = null;
        }
    }
}
