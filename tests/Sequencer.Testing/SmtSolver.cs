using System.Collections.Immutable;
using System.ComponentModel;
using System.Diagnostics;
using Xunit;

namespace Sequencer.Testing;

/// <summary>An outside solver of SMT-LIB, run as a process on a file of its own.</summary>
public sealed record SmtSolver(string Program, string DebianPackage, ImmutableArray<string> Options)
{
    private static readonly TimeSpan LongestRun = TimeSpan.FromMinutes(5);

    public static SmtSolver Z3 { get; } = new("z3", "z3", ["-smt2"]);

    public static SmtSolver Cvc5 { get; } = new("cvc5", "cvc5", ["--lang=smt2", "--incremental"]);

    /// <summary>The lines of the solver's answer. A missing solver fails with the command that installs it.</summary>
    public IReadOnlyList<string> Answers(string text)
    {
        string file = Path.Combine(Path.GetTempPath(), $"{Guid.NewGuid():N}.smt2");
        File.WriteAllText(file, text);
        try
        {
            return Run(file);
        }
        finally
        {
            File.Delete(file);
        }
    }

    /// <summary>Fails unless the solver answers every question of the text, and each with <c>unsat</c>.</summary>
    public void Discharge(string text)
    {
        int questions = text.Split("(check-sat)").Length - 1;
        IReadOnlyList<string> answers = Answers(text);
        Assert.True(
            questions > 0 && answers.Count == questions && answers.All(answer => answer == "unsat"),
            FormattableString.Invariant($"{Program}: {answers.Count} answers to {questions} questions: {string.Join(", ", answers.Where(answer => answer != "unsat"))}"));
    }

    public override string ToString() => Program;

    private string[] Run(string file)
    {
        ProcessStartInfo start = new(Program, [.. Options, file]) { RedirectStandardOutput = true };
        Process process;
        try
        {
            process = Process.Start(start) ?? throw new InvalidOperationException($"{Program} did not start");
        }
        catch (Win32Exception)
        {
            Assert.Fail($"{Program} is not installed; install it with: apt-get install -y {DebianPackage}");
            throw;
        }

        using (process)
        {
            Task<string> output = process.StandardOutput.ReadToEndAsync();
            if (!process.WaitForExit(LongestRun))
            {
                process.Kill();
                Assert.Fail($"{Program} gave no answer within {LongestRun}");
            }

            return [.. output.GetAwaiter().GetResult().Split('\n', StringSplitOptions.RemoveEmptyEntries)];
        }
    }
}
