using System.Diagnostics;
using System.Globalization;
using Sequencer.Plant.Description;
using Sequencer.Testing;
using Sequencer.Testing.HandWrittenPlant;
using Sequencer.Text;

namespace Sequencer.Benchmarks;

/// <summary>Eight hours of a demo plant's motion, read each scan, beside the same equations and steps written by hand in C (gcc -O2), in turns.</summary>
internal sealed class PlantBenchmark : Benchmark
{
    private const double Hours = 8.0;
    private const int ScansInMinute = 600;
    private const int Rounds = 9;

    public override string Name => "plant";

    public override IEnumerable<Figure> Run()
    {
        DiagnosticBag diagnostics = new();
        PlantModel model = PlantReader.Read(new SourceText("plant.yaml", File.ReadAllText(Path.Combine(RepositoryPath.Site("fernhollow"), "plant.yaml"))), diagnostics)
            ?? throw new InvalidOperationException(DiagnosticRenderer.Render(diagnostics.InOrder()));
        MotionScript script = MotionScript.Fernhollow(Hours);
        using HandWrittenProgram program = HandWrittenProgram.Steps();
        List<double> ours = [];
        List<double> theirs = [];
        double apart = 0.0;
        for (int round = 0; round < Rounds; round++)
        {
            TimeSpan start = Used();
            (IReadOnlyList<double[]> states, long steps, long equilibria) = SimulatedMotion.Play(model, script, ScansInMinute);
            ours.Add((Used() - start).TotalMilliseconds);
            (IReadOnlyList<double[]> other, string last) = program.Play(model, script, string.Create(CultureInfo.InvariantCulture, $"{ScansInMinute}"));
            string[] words = last.Split(' ');
            theirs.Add(1e3 * double.Parse(words[5], CultureInfo.InvariantCulture));
            if (!last.StartsWith(FormattableString.Invariant($"steps {steps} equilibria {equilibria} "), StringComparison.Ordinal))
            {
                throw new InvalidOperationException($"the hand-written plant took other steps: {last}, ours {steps} and {equilibria}");
            }

            apart = Math.Max(apart, states.Zip(other).Max(pair => pair.First.Zip(pair.Second).Max(values => Math.Abs(values.First - values.Second) / Math.Max(1.0, Math.Abs(values.Second)))));
        }

        double our = Middle(ours);
        double their = Middle(theirs);
        yield return new Figure("simulator's motion of fernhollow, 8 h", our, "ms");
        yield return new Figure("by hand in C", their, "ms");
        yield return new Figure("times its time", our / their, string.Empty);
        yield return new Figure("furthest apart, in 1e-9 of a value or of 1", apart * 1e9, string.Empty);
        yield return new Figure("times real time", Hours * 3.6e6 / our, string.Empty);
    }

    /// <summary>Processor time of all threads, as the program in C tells its own: others may share the machine.</summary>
    private static TimeSpan Used()
    {
        using Process own = Process.GetCurrentProcess();
        return own.TotalProcessorTime;
    }

    private static double Middle(List<double> times) => times.Order().ElementAt(times.Count / 2);
}
