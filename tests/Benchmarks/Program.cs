using System.Runtime.InteropServices;
using Sequencer.Benchmarks;

Benchmark[] all = [new StepperBenchmark(), new RandomSystemBenchmark(), new CertificateBenchmark(), new CheckBenchmark(), new WritingBenchmark(), new SiteBenchmark(), new PlantBenchmark(), new ProgramStartBenchmark(), new ProofBenchmark(), new DoublingBenchmark(), new VerifierBenchmark()];
Benchmark[] chosen = [.. all.Where(benchmark => args.Length == 0 || args.Contains(benchmark.Name, StringComparer.Ordinal))];
if (chosen.Length == 0)
{
    Console.Error.WriteLine($"no such benchmark; there are: {string.Join(", ", all.Select(benchmark => benchmark.Name))}");
    return 2;
}

Console.WriteLine($"{RuntimeInformation.OSDescription}, {RuntimeInformation.ProcessArchitecture}, {Environment.ProcessorCount} processors, .NET {Environment.Version}; medians");
foreach (Benchmark benchmark in chosen)
{
    Console.WriteLine(benchmark.Name);
    foreach (Figure figure in benchmark.Run())
    {
        Console.WriteLine(figure);
    }
}

return 0;
