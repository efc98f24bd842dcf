using System.Diagnostics;
using System.Globalization;
using Sequencer.Language.Parsing;

namespace Sequencer.Spec.Tests.Fuzzing;

/// <summary>Judges input after input of one seed, each within a bound of processor time, until all are done or one fails.</summary>
internal sealed class FuzzRun(int seed)
{
    /// <summary>A stack as small as that of a worker thread: what passes here is safe in an editor too.</summary>
    private const int StackBytes = 1024 * 1024;

    /// <summary>Lines are remembered over this many inputs; then all is read anew, so that memory stays bounded.</summary>
    private const int InputsOfOneCache = 500;

    /// <summary>Watching begins after this time: most inputs need some milliseconds.</summary>
    private static readonly TimeSpan Unwatched = TimeSpan.FromSeconds(1);

    private static readonly TimeSpan LongestProcessorTime = TimeSpan.FromSeconds(10);

    private ParseCache _cache = new();

    public int Count { get; private set; }

    public int Lowered { get; private set; }

    /// <summary>Judges the inputs from <paramref name="first"/> on; the message of the first failure, shrunk and kept in a file, or null.</summary>
    public string? Judge(int first, Func<FuzzRun, bool> goOn)
    {
        for (int number = first; goOn(this); number++)
        {
            if (Count % InputsOfOneCache == 0)
            {
                _cache = new ParseCache();
            }

            FuzzInput input = FuzzMutator.Make(seed, number);
            string? fault = Judge(input, _cache);
            Count++;
            if (fault is not null)
            {
                return Report(number, input, fault);
            }
        }

        return null;
    }

    /// <summary>On a thread of its own with a small stack. What does not end is given up, and its thread with it.</summary>
    public string? Judge(FuzzInput input, ParseCache cache)
    {
        string? fault = null;
        bool lowered = false;
        Thread worker = new(() => fault = FuzzJudge.Fault(input, cache, out lowered), StackBytes) { IsBackground = true };
        worker.Start();
        if (!worker.Join(Unwatched))
        {
            TimeSpan begin = ProcessorTime();
            while (!worker.Join(Unwatched))
            {
                if (ProcessorTime() - begin > LongestProcessorTime)
                {
                    return "no end within the bound of processor time";
                }
            }
        }

        Lowered += lowered ? 1 : 0;
        return fault;
    }

    private string Report(int number, FuzzInput input, string fault)
    {
        FuzzInput small = fault.StartsWith("no end", StringComparison.Ordinal) ? input : FuzzShrinker.Shrink(input, candidate => Judge(candidate, new ParseCache()) == fault);
        string folder = Path.Combine(AppContext.BaseDirectory, "fuzz");
        Directory.CreateDirectory(folder);
        string file = Path.Combine(folder, string.Create(CultureInfo.InvariantCulture, $"seed-{seed}-input-{number}.txt"));
        File.WriteAllText(file, small.Write());
        return string.Create(CultureInfo.InvariantCulture, $"seed {seed}, input {number}: {fault}\nkept in {file}\nagain: FUZZ_SEED={seed} FUZZ_FIRST={number} bash tests/full fuzz\n{small.Write()}");
    }

    private static TimeSpan ProcessorTime()
    {
        using Process process = Process.GetCurrentProcess();
        return process.TotalProcessorTime;
    }
}
