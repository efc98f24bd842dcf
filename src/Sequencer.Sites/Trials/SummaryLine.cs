using System.Collections.Immutable;
using System.Globalization;
using Sequencer.Simulation.Trials;

namespace Sequencer.Sites.Trials;

/// <summary>The summary of a run as one line of a journal: exact to the last bit, with a checksum at its end.</summary>
internal static class SummaryLine
{
    private const char Mark = '\t';
    private const string None = "-";
    private const int Fields = 23;

    public static string Write(int run, RunSummary summary)
    {
        string line = string.Join(
            Mark,
            run.ToString(CultureInfo.InvariantCulture),
            summary.End.ToString(),
            Number(summary.Seconds),
            Number(summary.BatchSeconds),
            Numbers(summary.Values),
            Numbers(summary.Overflowed),
            Number(summary.Leaked),
            string.Concat(summary.Expectations.Select(came => came ? '1' : '0')) + None,
            summary.FirstAlarm?.Name ?? None,
            Number(summary.FirstAlarm?.Seconds ?? double.NaN),
            summary.Reaction?.Name ?? None,
            Number(summary.Reaction?.Seconds ?? double.NaN),
            Number(summary.RestSeconds),
            summary.Broken?.Name ?? None,
            Number(summary.Broken?.Seconds ?? double.NaN),
            summary.Overdosed?.Output ?? None,
            Number(summary.Overdosed?.Litres ?? double.NaN),
            summary.Final,
            summary.IsAtRest ? "rest" : None,
            summary.Asking + None,
            Number(summary.Unbalanced),
            summary.Failure + None);
        return line + Mark + Checksum(line);
    }

    /// <summary>Null where the line is not whole.</summary>
    public static (int Run, RunSummary Summary)? Read(string line)
    {
        string[] fields = line.Split(Mark);
        int last = line.LastIndexOf(Mark);
        if (fields.Length != Fields || fields[^1] != Checksum(line[..last]))
        {
            return null;
        }

        RunSummary summary = new(
            Enum.Parse<RunEndKind>(fields[1]),
            Number(fields[2]),
            Number(fields[3]),
            Numbers(fields[4]),
            Numbers(fields[5]),
            Number(fields[6]),
            [.. fields[7].TrimEnd('-').Select(sign => sign == '1')],
            Happening(fields[8], fields[9]),
            Happening(fields[10], fields[11]),
            Number(fields[12]),
            Happening(fields[13], fields[14]),
            fields[15] == None ? null : new Overdose(fields[15], Number(fields[16])),
            fields[17],
            fields[18] != None,
            fields[19][..^1],
            Number(fields[20]),
            fields[21][..^1]);
        return (int.Parse(fields[0], CultureInfo.InvariantCulture), summary);
    }

    private static Happening? Happening(string name, string seconds) => name == None ? null : new Happening(name, Number(seconds));

    private static string Number(double value) => value.ToString("R", CultureInfo.InvariantCulture);

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);

    private static string Numbers(ImmutableArray<double> values) => string.Join(' ', values.Select(Number));

    private static ImmutableArray<double> Numbers(string text) => [.. text.Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(Number)];

    /// <summary>FNV-1a, 64 bit (Fowler, Noll and Vo).</summary>
    private static string Checksum(string line)
    {
        ulong hash = 0xCBF29CE484222325UL;
        foreach (char character in line)
        {
            hash = (hash ^ character) * 0x100000001B3UL;
        }

        return hash.ToString("x16", CultureInfo.InvariantCulture);
    }
}
