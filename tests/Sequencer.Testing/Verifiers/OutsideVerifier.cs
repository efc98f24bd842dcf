using System.Diagnostics;
using System.Globalization;
using Sequencer.Control.TransitionSystems;
using Xunit;

namespace Sequencer.Testing.Verifiers;

/// <summary>A program that is not ours, asked whether a system's only requirement holds. A missing one fails with the command that installs it.</summary>
public sealed class OutsideVerifier
{
    private readonly string _name;
    private readonly Func<TransitionSystem, string, TimeSpan, OutsideAnswer> _ask;

    private OutsideVerifier(string name, Func<TransitionSystem, string, TimeSpan, OutsideAnswer> ask)
    {
        _name = name;
        _ask = ask;
    }

    /// <summary>Visits state after state (its verifier is compiled by gcc; all three steps count).</summary>
    public static OutsideVerifier Spin { get; } = new("spin", AskSpin);

    /// <summary>Looks for an invariant by its fixedpoint engine for Horn clauses.</summary>
    public static OutsideVerifier Z3 { get; } = new("z3", AskZ3);

    public OutsideAnswer Ask(TransitionSystem system, TimeSpan limit)
    {
        DirectoryInfo folder = Directory.CreateTempSubdirectory("sequencer-verifier-");
        try
        {
            return _ask(system, folder.FullName, limit);
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    public override string ToString() => _name;

    private static OutsideAnswer AskSpin(TransitionSystem system, string folder, TimeSpan limit)
    {
        File.WriteAllText(Path.Combine(folder, "system.pml"), PromelaText.Write(system));
        (string seen, double seconds) = Run(
            ["spin", "gcc"],
            folder,
            limit,
            "spin -a system.pml && gcc -O2 -w -DSAFETY -DVECTORSZ=65536 -DMEMLIM=4096 -o pan pan.c && ./pan -m2000000 -w22 -n");
        bool cut = Says("max search depth too small") || Says("out of memory") || Says("reached -DMEMLIM");
        return new OutsideAnswer(Says("assertion violated") ? false : Says("errors: 0") && !cut ? true : null, seconds, seen);

        bool Says(string words) => seen.Contains(words, StringComparison.Ordinal);
    }

    private static OutsideAnswer AskZ3(TransitionSystem system, string folder, TimeSpan limit)
    {
        File.WriteAllText(Path.Combine(folder, "system.smt2"), HornText.Write(system));
        (string seen, double seconds) = Run(["z3"], folder, limit, "z3 fp.engine=spacer system.smt2");
        string[] lines = seen.Split('\n');
        return new OutsideAnswer(lines.Contains("sat") ? true : lines.Contains("unsat") ? false : null, seconds, seen);
    }

    /// <summary>Runs a line of the shell, whose programs have so much processor time each; what they printed, and the processor time of all.</summary>
    private static (string Output, double Seconds) Run(string[] packages, string folder, TimeSpan limit, string line)
    {
        foreach (string package in packages.Where(package => !IsInstalled(package)))
        {
            Assert.Fail($"{package} is not installed; install it with: apt-get install -y {package}");
        }

        string seconds = limit.TotalSeconds.ToString("0", CultureInfo.InvariantCulture);
        ProcessStartInfo start = new("bash", ["-c", $"ulimit -t {seconds}; {{ {line}; }} 2>&1; times"])
        {
            WorkingDirectory = folder,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        using Process process = Process.Start(start) ?? throw new InvalidOperationException("bash did not start");
        Task<string> errors = process.StandardError.ReadToEndAsync();
        string output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        _ = errors.GetAwaiter().GetResult();
        string[] lines = output.TrimEnd().Split('\n');
        return (string.Join('\n', lines[..^2]), lines[^1].Split(' ').Sum(Seconds));
    }

    private static bool IsInstalled(string program) =>
        (Environment.GetEnvironmentVariable("PATH") ?? string.Empty).Split(Path.PathSeparator).Any(folder => File.Exists(Path.Combine(folder, program)));

    /// <summary>What the shell prints as 1m2.345s.</summary>
    private static double Seconds(string time)
    {
        string[] parts = time.TrimEnd('s').Split('m');
        return (60 * double.Parse(parts[0], CultureInfo.InvariantCulture)) + double.Parse(parts[1], CultureInfo.InvariantCulture);
    }
}
