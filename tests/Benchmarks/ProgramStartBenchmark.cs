using System.Diagnostics;
using Sequencer.Testing;

namespace Sequencer.Benchmarks;

/// <summary>
/// The published program (ReadyToRun) from a cold start, beside an empty console program published the same
/// way: checking the small site, verifying both.
/// </summary>
internal sealed class ProgramStartBenchmark : Benchmark
{
    private const string Project = """
        <Project Sdk="Microsoft.NET.Sdk">
          <PropertyGroup>
            <OutputType>Exe</OutputType>
            <TargetFramework>net10.0</TargetFramework>
            <InvariantGlobalization>true</InvariantGlobalization>
          </PropertyGroup>
        </Project>
        """;

    public override string Name => "start";

    public override IEnumerable<Figure> Run()
    {
        DirectoryInfo scratch = Directory.CreateTempSubdirectory("sequencer-benchmark-");
        try
        {
            string empty = Path.Combine(scratch.FullName, "empty");
            Directory.CreateDirectory(empty);
            File.WriteAllText(Path.Combine(empty, "empty.csproj"), Project);
            File.WriteAllText(Path.Combine(empty, "Program.cs"), "return 0;\n");
            string nothing = Publish(empty, Path.Combine(scratch.FullName, "empty-published"), "empty");
            string sequencer = Publish(RepositoryPath.At("src", "Sequencer.Cli"), Path.Combine(scratch.FullName, "published"), "sequencer");
            yield return new Figure("empty program (baseline)", Median.Milliseconds(() => Start(nothing)), "ms");
            foreach (string site in (string[])["fernhollow", "marlpit-wharf"])
            {
                string folder = RepositoryPath.Site(site);
                yield return new Figure($"check {site}", Median.Milliseconds(() => Start(sequencer, "check", folder)), "ms");
            }

            foreach (string site in (string[])["fernhollow", "marlpit-wharf"])
            {
                Stopwatch watch = Stopwatch.StartNew();
                Start(sequencer, "verify", RepositoryPath.Site(site), "--out", Path.Combine(scratch.FullName, site));
                yield return new Figure($"verify {site} (once)", watch.Elapsed.TotalMilliseconds, "ms");
            }
        }
        finally
        {
            scratch.Delete(recursive: true);
        }
    }

    private static string Publish(string project, string output, string name)
    {
        string[] options = ["-c", "Release", "-r", "linux-x64", "-p:PublishReadyToRun=true", "--self-contained", "false", "-v", "quiet", "-o", output];
        Start("dotnet", ["publish", project, .. options]);
        return Path.Combine(output, name);
    }

    private static void Start(string program, params string[] arguments)
    {
        ProcessStartInfo start = new(program, arguments) { RedirectStandardOutput = true };
        using Process process = Process.Start(start) ?? throw new InvalidOperationException($"{program} did not start");
        string output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        if (process.ExitCode != 0)
        {
            throw new InvalidOperationException($"{program} {string.Join(' ', arguments)} ended with {process.ExitCode}\n{output}");
        }
    }
}
