using Sequencer.Control.Execution;
using Sequencer.Control.TransitionSystems;
using Sequencer.Testing;

namespace Sequencer.Benchmarks;

/// <summary>Random systems, whose expressions are denser than a plant's, and how compiling grows with size.</summary>
internal sealed class RandomSystemBenchmark : Benchmark
{
    private const int Scans = 200;

    public override string Name => "random";

    public override IEnumerable<Figure> Run()
    {
        foreach (int states in (int[])[30, 300, 3000])
        {
            TransitionSystem system = RandomSystem.Create(2, states);
            CompiledStepper compiled = new(system, []);
            Interpreter interpreter = new(system);
            string size = FormattableString.Invariant($"{system.States.Length} states: ");
            yield return new Figure(size + "compiled stepper", Time(compiled), "ns/scan");
            yield return new Figure(size + "interpreter", Time(interpreter), "ns/scan");
            yield return new Figure(size + "compiling (and its first scan)", Median.Milliseconds(() => new CompiledStepper(system, []).Step()), "ms");
        }
    }

    private static double Time(Stepper stepper) => Median.Nanoseconds(Scans, () =>
    {
        Random random = new(1);
        for (int scan = 0; scan < Scans; scan++)
        {
            if (scan % 50 == 0)
            {
                RandomSystem.FillInputs(stepper.System, random, stepper.Inputs);
            }

            stepper.Step();
        }
    });
}
