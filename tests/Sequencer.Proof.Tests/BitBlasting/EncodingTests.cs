using System.Collections.Immutable;
using Sequencer.Control.Execution;
using Sequencer.Control.TransitionSystems;
using Sequencer.Proof.BitBlasting;
using Sequencer.Proof.Runs;
using Sequencer.Proof.Satisfiability;
using Sequencer.Testing;

namespace Sequencer.Proof.Tests.BitBlasting;

public sealed class EncodingTests
{
    [Fact]
    public void One_scan_in_gates_does_what_the_interpreter_does()
    {
        int scans = 0;
        for (int seed = 0; seed < 60; seed++)
        {
            TransitionSystem system = RandomSystem.Create(seed, 8);
            ImmutableArray<Expression> observed = Observed(system);
            Interpreter interpreter = new(system, observed);
            Solver solver = new(new Budget(long.MaxValue, CancellationToken.None));
            Circuit circuit = new(solver);
            Scan scan = Scan.FromAnywhere(circuit, system);
            BitVector[] values = [.. observed.Select(scan.Encoding.Vector)];
            ImmutableArray<BitVector> after = scan.After();
            Random random = new(seed);
            for (int round = 0; round < 8; round++, scans++)
            {
                RandomSystem.FillInputs(system, random, interpreter.Inputs);
                Literal[] known = [.. Known(scan.Inputs, interpreter.Inputs), .. Known(scan.States, interpreter.States.ToArray())];
                interpreter.Step();
                Assert.True(solver.Solve(known), $"seed {seed}: a scan has no outcome");
                Literal[] outcome = [.. Known(values, interpreter.Observed), .. Known(after, interpreter.States.ToArray())];
                Assert.All(outcome, literal => Assert.True(solver.ModelValue(literal), $"seed {seed}, round {round}"));
            }
        }

        Assert.Equal(480, scans);
    }

    [Fact]
    public void Strides_go_where_single_scans_go()
    {
        int strides = 0;
        for (int seed = 0; seed < 60; seed++)
        {
            TransitionSystem system = RandomSystem.Create(seed, 6);
            SearchRun run = new(system, system.Assumptions[0].Holds, system.Requirements[0].Holds, []);
            Interpreter interpreter = new(system, [system.Requirements[0].Holds, system.Assumptions[0].Holds]);
            long[] states = [.. SearchRun.InitialStates(system)];
            Random random = new(seed);
            for (int round = 0; round < 30; round++)
            {
                RandomSystem.FillInputs(system, random, interpreter.Inputs);
                int scans = run.Stride(interpreter.Inputs, states, 1000);
                strides += scans > 1 ? 1 : 0;
                for (int scan = 0; scan < scans; scan++)
                {
                    interpreter.Step();
                    Assert.Equal(run.BrokeRequirement, interpreter.Observed[0] == 0);
                    Assert.Equal(run.KeptAssumptions, interpreter.Observed[1] != 0);
                }

                Assert.Equal(interpreter.States, states);
            }
        }

        Assert.True(strides > 100, $"only {strides} strides were longer than a scan");
    }

    private static ImmutableArray<Expression> Observed(TransitionSystem system) =>
        [.. system.Requirements.Select(r => r.Holds), .. system.Assumptions.Select(a => a.Holds), .. system.Definitions.Select(d => d.Value), .. system.Outputs.Select(o => o.Value)];

    private static IEnumerable<Literal> Known(IReadOnlyList<BitVector> vectors, long[] values) =>
        vectors.SelectMany((vector, index) => vector.Width == 1 ? [vector.Bits[0].NegatedIf(values[index] == 0)] : vector.Fixed(values[index]));
}
