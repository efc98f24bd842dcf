using System.ComponentModel;
using System.Diagnostics;
using Xunit;

namespace Sequencer.Testing.Pascal;

/// <summary>The Free Pascal compiler of Debian, an outside judge. Where it is missing a test fails with the command that installs it.</summary>
public static class FreePascal
{
    private static readonly TimeSpan LongestRun = TimeSpan.FromMinutes(3);

    /// <summary>Compiles a program in a folder of its own; answers the program's path.</summary>
    /// <param name="folder">Takes the source and what comes of it.</param>
    /// <param name="source">The whole program.</param>
    /// <param name="options">More options for the compiler.</param>
    public static string Compile(string folder, string source, params string[] options)
    {
        const string name = "lockstep";
        string file = Path.Combine(folder, name + ".pas");
        File.WriteAllText(file, source);
        File.Copy(RepositoryPath.At("tests", "Sequencer.Testing", "Pascal", "StandardBlocks.pas"), Path.Combine(folder, "standardblocks.pas"), overwrite: true);
        ProcessStartInfo start = new("fpc", ["-O2", "-v0we", $"-FE{folder}", .. options, file])
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            WorkingDirectory = folder,
        };
        using Process process = Start(start, "fp-compiler");
        Task<string> output = process.StandardOutput.ReadToEndAsync();
        Task<string> errors = process.StandardError.ReadToEndAsync();
        if (!process.WaitForExit(LongestRun))
        {
            process.Kill();
            Assert.Fail($"fpc did not end within {LongestRun}");
        }

        Assert.True(process.ExitCode == 0, $"fpc refuses {file}:\n{output.GetAwaiter().GetResult()}{errors.GetAwaiter().GetResult()}");
        return Path.Combine(folder, name);
    }

    private static Process Start(ProcessStartInfo start, string package)
    {
        try
        {
            return Process.Start(start) ?? throw new InvalidOperationException($"{start.FileName} did not start");
        }
        catch (Win32Exception)
        {
            Assert.Fail($"{start.FileName} is not installed; install it with: apt-get install -y {package}");
            throw;
        }
    }
}
