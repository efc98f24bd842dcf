namespace Sequencer.StructuredText.Tests;

public sealed class RandomProgramTests
{
    private const int Programs = 60;
    private const int ScansEach = 60;

    [Fact]
    public void Ways_through_if_and_case_merge_to_what_running_them_gives()
    {
        Random random = new(61131);
        for (int seed = 0; seed < Programs; seed++)
        {
            (string text, Action<long[]> run) = RandomPrograms.Make(seed);
            Scans scans = Scans.Of(Driven(text), allowed: "SEQ0743");
            long[] values = new long[RandomPrograms.Names.Length];
            for (int scan = 0; scan < ScansEach; scan++)
            {
                (values[0], values[1]) = (random.Next(RandomPrograms.Most + 1), random.Next(RandomPrograms.Most + 1));
                scans.Scan(("X", values[0]), ("Y", values[1]));
                run(values);
                Assert.True(
                    (values[2], values[3], values[4]) == (scans["A"], scans["B"], scans["C"]),
                    $"program {seed}, scan {scan}: {values[2]} {values[3]} {values[4]} but {scans["A"]} {scans["B"]} {scans["C"]}\n{text}");
            }
        }
    }

    /// <summary>The text with its outputs assigned once more, so that none counts as never assigned.</summary>
    private static string Driven(string text) =>
        text.Replace("END_PROGRAM", "A := A; B := B; C := C;\nEND_PROGRAM", StringComparison.Ordinal);
}
