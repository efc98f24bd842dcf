using System.ComponentModel;
using System.Diagnostics;
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
        Stopwatch watch = Stopwatch.StartNew();
        string? made = Run("spin", "spin", folder, limit, "-a", "system.pml");
        string? compiled = made is null ? null : Run("gcc", "gcc", folder, limit - watch.Elapsed, "-O2", "-w", "-DSAFETY", "-DVECTORSZ=65536", "-DMEMLIM=4096", "-o", "pan", "pan.c");
        string? seen = compiled is null ? null : Run(Path.Combine(folder, "pan"), "spin", folder, limit - watch.Elapsed, "-m2000000", "-w22", "-n");
        bool cut = seen is null || seen.Contains("max search depth too small", StringComparison.Ordinal) || seen.Contains("out of memory", StringComparison.Ordinal) || seen.Contains("reached -DMEMLIM", StringComparison.Ordinal);
        bool failed = seen is not null && seen.Contains("assertion violated", StringComparison.Ordinal);
        bool clean = seen is not null && seen.Contains("errors: 0", StringComparison.Ordinal);
        return new OutsideAnswer(failed ? false : clean && !cut ? true : null, watch.Elapsed.TotalSeconds, seen ?? compiled ?? made ?? string.Empty);
    }

    private static OutsideAnswer AskZ3(TransitionSystem system, string folder, TimeSpan limit)
    {
        File.WriteAllText(Path.Combine(folder, "system.smt2"), HornText.Write(system));
        Stopwatch watch = Stopwatch.StartNew();
        string seen = Run("z3", "z3", folder, limit, "fp.engine=spacer", "system.smt2") ?? string.Empty;
        return new OutsideAnswer(seen.Trim() switch { "sat" => true, "unsat" => false, _ => null }, watch.Elapsed.TotalSeconds, seen);
    }

    private static string? Run(string program, string package, string folder, TimeSpan limit, params string[] arguments)
    {
        ProcessStartInfo start = new(program, arguments) { WorkingDirectory = folder, RedirectStandardOutput = true, RedirectStandardError = true };
        try
        {
            using Process process = Process.Start(start) ?? throw new InvalidOperationException($"{program} did not start");
            Task<string> output = process.StandardOutput.ReadToEndAsync();
            Task<string> errors = process.StandardError.ReadToEndAsync();
            if (!process.WaitForExit(limit > TimeSpan.Zero ? limit : TimeSpan.Zero))
            {
                process.Kill(entireProcessTree: true);
                process.WaitForExit();
                return null;
            }

            return output.GetAwaiter().GetResult() + errors.GetAwaiter().GetResult();
        }
        catch (Win32Exception)
        {
            Assert.Fail($"{program} is not installed; install it with: apt-get install -y {package}");
            throw;
        }
    }
}
