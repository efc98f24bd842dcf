using Sequencer.Language.Programs;

namespace Sequencer.Lowering.Tests.States;

/// <summary>A unit with steps in all four transient states: motor M2 runs there, until S2, for at most one second a step.</summary>
internal static class SectionBench
{
    public const int LimitScans = 10;

    public const string AllFour = """
          step 10 "Batch"
            run M1
            limit 1 h then hold "Too long"
            go finish when S1
        holding
          step 110 "Hold"
            run M2
            limit 1 s then go finish "Holding takes too long"
            go finish when S2
        restarting
          step 120 "Restart"
            run M2
            limit 1 s then go finish "Restarting takes too long"
            go finish when S2
        stopping
          step 130 "Stop"
            run M2
            limit 1 s then go finish "Stopping takes too long"
            go finish when S2
        aborting
          step 140 "Abort"
            run M2
            limit 1 s then go finish "Aborting takes too long"
            go finish when S2
        """;

    /// <summary>In the first scan of the state.</summary>
    public static ProgramBench In(ProceduralState state, string declarations = "", string procedure = AllFour)
    {
        ProgramBench bench = new(Program(declarations, procedure));
        bench.Scan().Press("start");
        switch (state)
        {
            case ProceduralState.Running: break;
            case ProceduralState.Holding: bench.Press("hold"); break;
            case ProceduralState.Held: Held(bench); break;
            case ProceduralState.Restarting: Held(bench).Press("restart"); break;
            case ProceduralState.Stopping: bench.Press("stop"); break;
            case ProceduralState.Aborting: bench.Press("abort"); break;
            default: throw new ArgumentOutOfRangeException(nameof(state), state, "not needed");
        }

        Assert.Equal(state, bench.State);
        return bench;
    }

    public static string Program(string declarations, string procedure = AllFour) => BenchPrograms.With(declarations, procedure)
        .Replace("\"Second motor\"  safe stopped", "\"Second motor\"  safe stopped driven while holding or restarting or stopping or aborting", StringComparison.Ordinal);

    private static ProgramBench Held(ProgramBench bench)
    {
        bench.Press("hold").Set("S2.contact", 1);
        bench.Scan(2).Set("S2.contact", 0);
        return bench;
    }
}
