using System.Globalization;
using System.Text;
using Sequencer.Simulation.Metadata;
using Sequencer.Simulation.Records;
using Sequencer.Simulation.Running;
using Sequencer.Simulation.Words;

namespace Sequencer.Simulation.Reports;

/// <summary>The batch report of a simulated run, in Markdown: what a reviewer reads and files.</summary>
public static class BatchReport
{
    private const string Cautions =
        "## Cautions\n\n"
        + "This is a simulated run. It supports review by a competent person; it is no proof about the real plant, and it "
        + "replaces no hazard study, no functional-safety assessment to IEC 61511, no site test and no local code. The plant "
        + "model knows only what its description says: dead zones, ageing probes and wrong deliveries beyond the faults "
        + "listed here are not in it. The reagents named here burn, blind or poison: handle them by their safety data "
        + "sheets and the site's own rules.\n";

    public static string Write(ScenarioResult result, SiteMetadata site)
    {
        StringBuilder text = new();
        text.Append(CultureInfo.InvariantCulture, $"# Batch report: {site.Name}, {result.Scenario.Name}\n\n");
        Head(text, result, site);
        Expectations(text, result);
        Settings(text, result.Record);
        StepTables.States(text, result.Record);
        StepTables.Steps(text, result.Record, site);
        StepTables.Readings(text, result.Record);
        BatchTables.Write(text, result.Record, site);
        DoseTables.Doses(text, result.Record, site);
        Alarms(text, result.Record);
        Actions(text, result);
        DoseTables.Discharge(text, result.Record, site);
        DoseTables.Balances(text, result.Record);
        text.Append(Cautions);
        return text.ToString();
    }

    private static void Head(StringBuilder text, ScenarioResult result, SiteMetadata site)
    {
        RunRecord record = result.Record;
        MarkdownTable table = new("item", "value");
        table.Add("site", site.Name);
        table.Add("program meaning", site.MeaningHash);
        table.Add("scenario", result.Scenario.Name);
        table.Add("purpose", result.Scenario.Description);
        if (result.Scenario.Recipe is { } recipe)
        {
            table.Add("recipe", recipe.Name);
        }

        table.Add("seed", result.Scenario.Seed.ToString(CultureInfo.InvariantCulture));
        table.Add("scan", string.Create(CultureInfo.InvariantCulture, $"{record.ScanMilliseconds} ms"));
        table.Add("simulated time", DurationWords.Of(record.Seconds) + (result.EndedByDuration ? ", ended by the scenario's time limit" : ""));
        table.Add("result", Verdict(result));
        table.Append(text, "");
        if (record.MergedChanges > 0)
        {
            text.Append(CultureInfo.InvariantCulture, $"Note: {record.MergedChanges} changes came too fast for a row each in the record's table.\n\n");
        }

        if (record.DroppedEvents > 0)
        {
            text.Append(CultureInfo.InvariantCulture, $"Note: {record.DroppedEvents} events beyond the record's bound are not listed.\n\n");
        }
    }

    private static string Verdict(ScenarioResult result)
    {
        if (result.Record.Failure is { } failure)
        {
            return $"**not valid**: the plant model stopped: {failure}";
        }

        int failed = result.Expectations.Count(expectation => !expectation.Passed);
        List<string> faults = [];
        if (failed > 0)
        {
            faults.Add(string.Create(CultureInfo.InvariantCulture, $"{failed} of {result.Expectations.Length} expectations failed"));
        }

        if (!result.Undone.IsEmpty)
        {
            faults.Add(string.Create(CultureInfo.InvariantCulture, $"{result.Undone.Length} scripted actions never had their moment"));
        }

        if (faults.Count > 0)
        {
            return $"**failed**: {string.Join("; ", faults)}";
        }

        return result.Expectations.IsEmpty ? "nothing was expected, so nothing was tested" : "every expectation came true";
    }

    private static void Expectations(StringBuilder text, ScenarioResult result)
    {
        text.Append("## Expectations\n\n");
        MarkdownTable table = new("expected", "seen", "result");
        foreach (ExpectationResult expectation in result.Expectations)
        {
            string scan = expectation.Scan is long number ? string.Create(CultureInfo.InvariantCulture, $" (scan {number})") : "";
            string since = expectation.Expectation.Since is null ? "" : " from its moment on";
            table.Add(expectation.Expected + since, expectation.Seen + scan, expectation.Passed ? "passed" : "**FAILED**");
        }

        table.Append(text, "The scenario expects nothing, so this run tests nothing.");
    }

    private static void Settings(StringBuilder text, RunRecord record)
    {
        text.Append("## Settings at the start\n\n");
        MarkdownTable table = new("parameter", "setting", "description");
        foreach (RunSetting setting in record.Settings)
        {
            table.Add(setting.Parameter, ValueWords.Of(setting.Value, setting.Decimals, setting.Unit), setting.Description);
        }

        table.Append(text, "The programs have no parameters.");
    }

    private static void Alarms(StringBuilder text, RunRecord record)
    {
        text.Append("## Alarms\n\n");
        MarkdownTable table = new("alarm", "message", "first raised", "times", "standing in all");
        foreach (AlarmTimes alarm in AlarmTimes.Of(record))
        {
            table.Add(
                alarm.Name,
                alarm.Words,
                DurationWords.Clock(record.SecondsAt(alarm.Times[0].From)),
                alarm.Times.Length.ToString(CultureInfo.InvariantCulture),
                DurationWords.Of(record.SecondsAt(alarm.Times.Sum(time => time.Scans))));
        }

        table.Append(text, "No alarm was raised.");
    }

    private static void Actions(StringBuilder text, ScenarioResult result)
    {
        text.Append("## Operator's actions and faults\n\n");
        MarkdownTable table = new("time", "what");
        foreach (RunEvent happening in result.Record.Events.Where(happening => happening.Kind is RunEventKind.Action or RunEventKind.PowerLost or RunEventKind.PowerReturned))
        {
            table.Add(DurationWords.Clock(result.Record.SecondsAt(happening.Scan)), happening.Words);
        }

        foreach (UndoneDeed undone in result.Undone)
        {
            table.Add("never", $"**its moment never came**: {undone.Words} ({undone.Span})");
        }

        table.Append(text, "Nothing was done and nothing failed.");
    }
}
