using System.Text;

namespace Sequencer.Lowering.Tests.States;

/// <summary>Sound programs with one to five steps in each section: forks, steps that may be passed over, limits that lead on.</summary>
internal sealed class RandomSections
{
    private static readonly string[] Words = ["holding", "restarting", "stopping", "aborting"];

    private readonly Random _random;
    private readonly StringBuilder _text = new();
    private readonly Dictionary<string, int> _limits = [];

    public RandomSections(int seed)
    {
        _random = new Random(seed);
        _text.AppendLine("  step 10 \"Batch\"\n    run M1\n    limit 3 s then hold \"Too long\"\n    go finish when S1");
        for (int section = 0; section < Words.Length; section++)
        {
            _text.AppendLine(Words[section]);
            Steps(Words[section], 100 * (section + 1), 1 + _random.Next(5));
        }
    }

    public string Program => SectionBench.Program("", _text.ToString());

    /// <summary>The limits of the section's steps together, in scans of 100 ms.</summary>
    public int Limits(string section) => _limits[section];

    private void Steps(string section, int first, int count)
    {
        _limits[section] = 0;
        for (int step = first; step < first + count; step++)
        {
            int last = first + count - 1;
            bool only = _random.Next(3) == 0;
            int limit = 3 + _random.Next(10);
            _limits[section] += limit;
            Line($"  step {step} \"Step\"{(only ? " only if S4" : "")}");
            Line(_random.Next(2) == 0 ? "    run M2" : "    run M2 after 0.2 s");
            string wayOut = step < last && _random.Next(2) == 0 ? $"{_random.Next(step + 1, last + 1)}" : "finish";
            Line($"    limit {limit * 100} ms then go {wayOut} \"Too long\"");
            string on = step == last ? "finish" : step + 1 < last && _random.Next(2) == 0 ? $"{step + 1} and {_random.Next(step + 2, last + 1)}" : $"{step + 1}";
            Line($"    go {on} when S{1 + _random.Next(2)}");
            if (!only && _random.Next(3) == 0)
            {
                Line("    go finish when S3");
            }
        }
    }

    private void Line(string line) => _text.AppendLine(line);
}
