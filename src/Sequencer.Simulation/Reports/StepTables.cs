using System.Text;
using Sequencer.Simulation.Metadata;
using Sequencer.Simulation.Records;
using Sequencer.Simulation.Words;

namespace Sequencer.Simulation.Reports;

/// <summary>When units and steps were in what state, and what was read when a step ended.</summary>
internal static class StepTables
{
    private const string None = "-";

    public static void States(StringBuilder text, RunRecord record)
    {
        text.Append("## States\n\n");
        MarkdownTable table = new("unit", "state", "start", "duration");
        foreach (StateVisit visit in record.States)
        {
            table.Add(visit.Unit, visit.State.ToString(), Start(record, visit.FromScan), Duration(record, visit.FromScan, visit.ToScan));
        }

        table.Append(text, "The site has no unit.");
    }

    public static void Steps(StringBuilder text, RunRecord record, SiteMetadata site)
    {
        text.Append("## Steps\n\n");
        MarkdownTable table = new("unit", "step", "title", "start", "duration", "expected", "limit", "remark");
        foreach (StepVisit visit in record.Steps)
        {
            StepMetadata? step = site.Step(visit.Unit, visit.Step);
            double seconds = record.SecondsAt((visit.ToScan ?? record.Scans) - visit.FromScan);
            table.Add(
                visit.Unit,
                visit.Step,
                step?.Title ?? "",
                Start(record, visit.FromScan),
                Duration(record, visit.FromScan, visit.ToScan),
                step?.ExpectedSeconds is double expected ? DurationWords.Of(expected) : None,
                step?.LimitSeconds is double limit ? DurationWords.Of(limit) : None,
                Remark(step, seconds));
        }

        table.Append(text, "No step was active.");
    }

    /// <summary>The measurements in the scan in which each step was left.</summary>
    public static void Readings(StringBuilder text, RunRecord record)
    {
        int[] signals = [.. Enumerable.Range(0, record.Columns.Length).Where(column => record.Columns[column].Kind == ColumnKind.Signal)];
        text.Append("## Readings at the end of steps\n\n");
        MarkdownTable table = new(["unit", "step", "time", .. signals.Select(column => Head(record.Columns[column]))]);
        foreach (StepVisit visit in record.Steps)
        {
            if (visit.ToScan is not long scan || signals.Length == 0)
            {
                continue;
            }

            int row = RowAt(record.Table, scan);
            table.Add([
                visit.Unit,
                visit.Step,
                Start(record, scan),
                .. signals.Select(column => ValueWords.Of(record.Table.Value(row, column), record.Columns[column].Decimals, "")),
            ]);
        }

        table.Append(text, "No step ended, or nothing is measured.");
    }

    private static string Head(RunColumn column) => column.Unit.Length == 0 ? column.Name : $"{column.Name}, {column.Unit}";

    private static string Remark(StepMetadata? step, double seconds)
    {
        if (step?.LimitSeconds is double limit && seconds > limit)
        {
            return "longer than its limit (a limit stands still in hold)";
        }

        return step?.ExpectedSeconds is double expected && seconds > expected * MuchLonger
            ? FormattableString.Invariant($"{seconds / expected:0.0} times the expected time")
            : "";
    }

    /// <summary>From here on a step's length is worth a remark: the usual margin of a limit over the expected time (common practice, no source).</summary>
    private const double MuchLonger = 1.3;

    private static string Start(RunRecord record, long scan) => DurationWords.Clock(record.SecondsAt(scan));

    private static string Duration(RunRecord record, long from, long? to) =>
        DurationWords.Of(record.SecondsAt((to ?? record.Scans) - from)) + (to is null ? ", not ended" : "");

    /// <summary>The last row at or before a scan.</summary>
    private static int RowAt(RecordTable table, long scan)
    {
        int low = 0;
        int high = table.Rows - 1;
        while (low < high)
        {
            int middle = (low + high + 1) / 2;
            (low, high) = table.Scan(middle) <= scan ? (middle, high) : (low, middle - 1);
        }

        return low;
    }
}
