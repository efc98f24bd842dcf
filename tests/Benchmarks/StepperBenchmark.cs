using Sequencer.Control.Execution;
using Sequencer.Control.TransitionSystems;
using Sequencer.Testing;

namespace Sequencer.Benchmarks;

/// <summary>A scan of 13 units (286 states) by each stepper, beside the same written by hand.</summary>
internal sealed class StepperBenchmark : Benchmark
{
    private const int Units = 13;
    private const int Scans = 20_000;
    private const int ScansInBatch = 500;

    /// <summary>Inputs of a plant stay for a while.</summary>
    private const int ScansAlike = 50;

    public override string Name => "stepper";

    public override IEnumerable<Figure> Run()
    {
        TransitionSystem system = BatchPlant.Create(Units);
        long[][] inputs = InputsOf(system);
        HandWrittenPlant byHand = new(Units);
        CompiledSystem compiled = CompiledSystem.Compile(system, []);
        CompiledStepper stepper = new(compiled);
        Interpreter interpreter = new(system);
        long pumped = DemandEqual(inputs, byHand, stepper);

        yield return new Figure("states", system.States.Length, string.Empty);
        yield return new Figure("expressions", ExpressionGraph.InOrder([.. system.States.Select(state => state.Next), .. system.Outputs.Select(output => output.Value)]).Length, string.Empty);
        yield return new Figure("scans in which a pump runs, of the run", pumped, string.Empty);
        yield return new Figure("written by hand", Time(inputs, byHand.Inputs, byHand.Step), "ns/scan");
        yield return new Figure("compiled stepper", Time(inputs, stepper.Inputs, stepper.Step), "ns/scan");
        yield return new Figure("interpreter", Time(inputs, interpreter.Inputs, interpreter.Step), "ns/scan");
        yield return new Figure("compiling (and its first scan)", Median.Milliseconds(() => new CompiledStepper(system, []).Step()), "ms");
        yield return new Figure("interpreter's preparation", Median.Milliseconds(() => new Interpreter(system).Step()), "ms");
    }

    private static long[][] InputsOf(TransitionSystem system)
    {
        Random random = new(1);
        long[] current = new long[system.Inputs.Length];
        long[][] inputs = new long[Scans / ScansAlike][];
        for (int number = 0; number < inputs.Length; number++)
        {
            RandomSystem.FillInputs(system, random, current);
            for (int unit = 0; unit < Units; unit++)
            {
                current[(unit * BatchPlant.InputsOfUnit) + 1] = random.Next(20) == 0 ? 1 : 0;
            }

            inputs[number] = [.. current];
        }

        return inputs;
    }

    /// <summary>In short batches, each going on where the last one ended: few are disturbed by other processes.</summary>
    private static double Time(long[][] inputs, long[] target, Action step)
    {
        int next = 0;
        return Median.Nanoseconds(ScansInBatch, () =>
        {
            for (int scan = 0; scan < ScansInBatch; scan++)
            {
                if (scan % ScansAlike == 0)
                {
                    inputs[next].CopyTo(target, 0);
                    next = (next + 1) % inputs.Length;
                }

                step();
            }
        });
    }

    /// <summary>A comparison is worth nothing unless both do the same.</summary>
    private static long DemandEqual(long[][] inputs, HandWrittenPlant byHand, CompiledStepper stepper)
    {
        long pumped = 0;
        for (int scan = 0; scan < Scans; scan++)
        {
            inputs[scan / ScansAlike].CopyTo(byHand.Inputs, 0);
            inputs[scan / ScansAlike].CopyTo(stepper.Inputs, 0);
            byHand.Step();
            stepper.Step();
            pumped += byHand.Outputs.Where(static (_, index) => index % 2 == 0).Any(static value => value == 1) ? 1 : 0;
            bool same = byHand.Outputs.AsSpan().SequenceEqual(stepper.Outputs)
                && byHand.Total(0) == stepper.States[(2 * BatchPlant.Steps) + 1];
            if (!same)
            {
                throw new InvalidOperationException($"the hand-written plant and the system part in scan {scan}");
            }
        }

        return pumped;
    }
}
