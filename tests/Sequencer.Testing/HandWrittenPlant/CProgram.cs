using System.ComponentModel;
using System.Diagnostics;
using Xunit;

namespace Sequencer.Testing.HandWrittenPlant;

/// <summary>A program in C, compiled by gcc -O2 in a folder of its own. A missing tool fails with the command that installs it.</summary>
public sealed class CProgram : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("sequencer-c-");
    private readonly string _program;

    /// <param name="sources">Paths of its files.</param>
    /// <param name="libraries">What the linker is told.</param>
    public CProgram(IEnumerable<string> sources, IEnumerable<string> libraries)
    {
        _program = Path.Combine(_folder.FullName, "program");
        (int exit, string output) = Start("gcc", ["-O2", "-o", _program, .. sources, .. libraries, "-lm"], string.Empty);
        Assert.True(exit == 0, $"gcc refuses a program:\n{output}");
    }

    /// <summary>The lines that it prints.</summary>
    public string[] Run(string[] arguments, string input)
    {
        (int exit, string output) = Start(_program, arguments, input);
        Assert.True(exit == 0, output);
        return output.TrimEnd().Split('\n');
    }

    public void Dispose() => _folder.Delete(recursive: true);

    private static (int Exit, string Output) Start(string program, string[] arguments, string input)
    {
        ProcessStartInfo start = new(program, arguments) { RedirectStandardInput = true, RedirectStandardOutput = true, RedirectStandardError = true };
        try
        {
            using Process process = Process.Start(start) ?? throw new InvalidOperationException($"{program} did not start");
            Task<string> output = process.StandardOutput.ReadToEndAsync();
            Task<string> errors = process.StandardError.ReadToEndAsync();
            process.StandardInput.Write(input);
            process.StandardInput.Close();
            process.WaitForExit();
            return (process.ExitCode, output.GetAwaiter().GetResult() + errors.GetAwaiter().GetResult());
        }
        catch (Win32Exception)
        {
            Assert.Fail($"{program} is not installed; install it with: apt-get install -y {program}");
            throw;
        }
    }
}
