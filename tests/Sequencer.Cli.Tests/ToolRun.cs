using System.Diagnostics;
using System.Text;
using System.Text.Json.Nodes;

namespace Sequencer.Cli.Tests;

/// <summary>
/// One run of the built program in a process of its own: what it printed, how it ended, how much processor time it took and
/// the most memory it was seen to hold.
/// </summary>
internal sealed record ToolRun(int ExitCode, string Output, string Error, TimeSpan ProcessorTime, long PeakBytes)
{
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(5);

    /// <summary>Standard output as JSON; fails where it is none.</summary>
    public JsonObject Json => JsonNode.Parse(Output)?.AsObject() ?? throw new InvalidOperationException("no JSON object");

    public string Everything => Output + Error;

    public static ToolRun Of(params string[] arguments) => In(Environment.CurrentDirectory, arguments);

    /// <summary>In a folder that relative paths count from.</summary>
    public static ToolRun In(string folder, params string[] arguments)
    {
        ProcessStartInfo start = new("dotnet", [Path.Combine(AppContext.BaseDirectory, "sequencer.dll"), .. arguments])
        {
            WorkingDirectory = folder,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            StandardOutputEncoding = Encoding.UTF8,
        };
        Stopwatch watch = Stopwatch.StartNew();
        using Process process = Process.Start(start) ?? throw new InvalidOperationException("dotnet did not start");
        Task<string> output = process.StandardOutput.ReadToEndAsync();
        Task<string> error = process.StandardError.ReadToEndAsync();
        long peak = 0;
        TimeSpan busy = default;
        while (!process.WaitForExit(10))
        {
            if (watch.Elapsed > Patience)
            {
                process.Kill();
                Assert.Fail($"`sequencer {string.Join(' ', arguments)}` did not end within {Patience}");
            }

            peak = Math.Max(peak, Peak(process));
            busy = Busy(process, busy);
        }

        return new ToolRun(process.ExitCode, output.GetAwaiter().GetResult(), error.GetAwaiter().GetResult(), busy, peak);
    }

    /// <summary>What the system kept as the process's peak; nothing once it has ended.</summary>
    private static TimeSpan Busy(Process process, TimeSpan before)
    {
        try
        {
            return process.TotalProcessorTime;
        }
        catch (InvalidOperationException)
        {
            return before;
        }
    }

    private static long Peak(Process process)
    {
        try
        {
            process.Refresh();
            return process.PeakWorkingSet64;
        }
        catch (InvalidOperationException)
        {
            return 0;
        }
    }
}
