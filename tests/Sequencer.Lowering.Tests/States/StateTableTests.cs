using Sequencer.Language.Programs;

namespace Sequencer.Lowering.Tests.States;

/// <summary>
/// The state transition matrix of IEC 61512-1 (example procedural states; from memory), without Pausing,
/// Paused and Resuming. Where a command has no entry, the state goes on by itself as without one.
/// </summary>
public sealed class StateTableTests
{
    private static readonly string[] Commands = ["", "start", "hold", "restart", "stop", "abort", "reset"];

    //                                     none        start       hold        restart       stop        abort       reset
    private static readonly (ProceduralState From, string Row)[] Matrix =
    [
        (ProceduralState.Idle,       "Idle        Running     Idle        Idle        Idle        Idle        Idle"),
        (ProceduralState.Running,    "Running     Running     Holding     Running     Stopping    Aborting    Running"),
        (ProceduralState.Complete,   "Complete    Complete    Complete    Complete    Complete    Complete    Idle"),
        (ProceduralState.Holding,    "Held        Held        Held        Held        Stopping    Aborting    Held"),
        (ProceduralState.Held,       "Held        Held        Held        Restarting  Stopping    Aborting    Held"),
        (ProceduralState.Restarting, "Running     Running     Holding     Running     Stopping    Aborting    Running"),
        (ProceduralState.Stopping,   "Stopped     Stopped     Stopped     Stopped     Stopped     Aborting    Stopped"),
        (ProceduralState.Stopped,    "Stopped     Stopped     Stopped     Stopped     Stopped     Aborting    Idle"),
        (ProceduralState.Aborting,   "Aborted     Aborted     Aborted     Aborted     Aborted     Aborted     Aborted"),
        (ProceduralState.Aborted,    "Aborted     Aborted     Aborted     Aborted     Aborted     Aborted     Idle"),
    ];

    public static TheoryData<ProceduralState, string, ProceduralState> Entries()
    {
        TheoryData<ProceduralState, string, ProceduralState> entries = [];
        foreach ((ProceduralState from, string row) in Matrix)
        {
            string[] to = row.Split(' ', StringSplitOptions.RemoveEmptyEntries);
            for (int column = 0; column < Commands.Length; column++)
            {
                entries.Add(from, Commands[column], Enum.Parse<ProceduralState>(to[column]));
            }
        }

        return entries;
    }

    [Theory]
    [MemberData(nameof(Entries))]
    public void A_state_answers_each_command_as_the_matrix_says(ProceduralState from, string command, ProceduralState to)
    {
        ProgramBench bench = In(from);

        bench.Press(command.Length == 0 ? [] : [command]);

        Assert.Equal(to, bench.State);
    }

    /// <summary>Abort beats stop beats hold beats restart beats start, and each of the stronger ones beats a reset.</summary>
    [Theory]
    [InlineData(ProceduralState.Running, "abort", "stop", ProceduralState.Aborting)]
    [InlineData(ProceduralState.Running, "abort", "hold", ProceduralState.Aborting)]
    [InlineData(ProceduralState.Running, "stop", "hold", ProceduralState.Stopping)]
    [InlineData(ProceduralState.Held, "abort", "restart", ProceduralState.Aborting)]
    [InlineData(ProceduralState.Held, "stop", "restart", ProceduralState.Stopping)]
    [InlineData(ProceduralState.Held, "hold", "restart", ProceduralState.Held)]
    [InlineData(ProceduralState.Idle, "abort", "start", ProceduralState.Idle)]
    [InlineData(ProceduralState.Idle, "stop", "start", ProceduralState.Idle)]
    [InlineData(ProceduralState.Idle, "hold", "start", ProceduralState.Idle)]
    [InlineData(ProceduralState.Stopped, "abort", "reset", ProceduralState.Aborting)]
    [InlineData(ProceduralState.Idle, "restart", "start", ProceduralState.Running)]
    public void The_stronger_of_two_commands_wins(ProceduralState from, string stronger, string weaker, ProceduralState to)
    {
        ProgramBench bench = In(from);

        bench.Press(stronger, weaker);

        Assert.Equal(to, bench.State);
    }

    [Fact]
    public void A_button_held_down_gives_one_command()
    {
        ProgramBench bench = BenchPrograms.Bench("");
        bench.Set("U.start", 1);
        bench.Scan(2);

        Assert.Equal(ProceduralState.Idle, bench.State);

        bench.Set("U.start", 0);
        bench.Scan().Press("start");

        Assert.Equal(ProceduralState.Running, bench.State);
    }

    [Fact]
    public void The_batch_ends_by_itself_when_the_last_step_has_finished()
    {
        ProgramBench bench = In(ProceduralState.Running);
        bench.Set("S1.contact", 1);

        Assert.Equal(ProceduralState.Complete, bench.Scan().State);
        Assert.Equal(0, bench["U.step10.active"]);
    }

    [Fact]
    public void Restarting_waits_as_long_as_declared()
    {
        ProgramBench bench = BenchPrograms.Started("after power loss held, restart begins with 0.5 s wait");
        bench.Press("hold").Scan().Press("restart");

        Assert.Equal(ProceduralState.Restarting, bench.Scan(4).State);
        Assert.Equal(ProceduralState.Running, bench.Scan().State);
    }

    /// <summary>By the commands of an operator only.</summary>
    internal static ProgramBench In(ProceduralState state, string declarations = "")
    {
        ProgramBench bench = BenchPrograms.Bench(declarations).Scan();
        if (state == ProceduralState.Idle)
        {
            return bench;
        }

        bench.Press("start");
        switch (state)
        {
            case ProceduralState.Running: break;
            case ProceduralState.Complete: bench.Set("S1.contact", 1); bench.Scan(); break;
            case ProceduralState.Holding: bench.Press("hold"); break;
            case ProceduralState.Held: bench.Press("hold").Scan(2); break;
            case ProceduralState.Restarting: bench.Press("hold").Scan().Press("restart"); break;
            case ProceduralState.Stopping: bench.Press("stop"); break;
            case ProceduralState.Stopped: bench.Press("stop").Scan(2); break;
            case ProceduralState.Aborting: bench.Press("abort"); break;
            default: bench.Press("abort").Scan(2); break;
        }

        Assert.Equal(state, bench.State);
        return bench;
    }
}
