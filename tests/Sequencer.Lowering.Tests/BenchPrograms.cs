namespace Sequencer.Lowering.Tests;

/// <summary>Programs whose switches S1 to S4 an author may use as conditions; M1 to M3 are motors, X1 is a valve.</summary>
internal static class BenchPrograms
{
    public const string OneStep = """
          step 10 "Only"
            run M1
            limit 1 h then hold "Too long"
            go finish when S1
        """;

    public static string With(string declarations, string procedure = OneStep) => $"""
        language 1
        unit U "Bench"
        input  LT1  0 .. 10.00 m3  at %IW0  "Level"  bad after 0.3 s
        input  S1  switch  at %IX0.0  "First"
        input  S2  switch  at %IX0.1  "Second"
        input  S3  switch  at %IX0.2  "Third"
        input  S4  switch  at %IX0.3  "Fourth"
        output M1  motor  at %QX0.0  "First motor"   safe stopped
        output M2  motor  at %QX0.1  "Second motor"  safe stopped
        output M3  motor  at %QX0.2  "Third motor"   safe stopped
        output X1  valve  at %QX0.3  "Valve"         safe closed
        {declarations}
        procedure
        {procedure}

        """;

    public static ProgramBench Bench(string declarations, string procedure = OneStep) => new(With(declarations, procedure));

    /// <summary>Running, in the scan after the start.</summary>
    public static ProgramBench Started(string declarations, string procedure = OneStep)
    {
        ProgramBench bench = Bench(declarations, procedure);
        bench.Scan();
        return bench.Press("start");
    }
}
