using System.Globalization;
using System.Text;
using Sequencer.Simulation.Metadata;
using Sequencer.Simulation.Records;
using Sequencer.Simulation.Words;

namespace Sequencer.Simulation.Reports;

/// <summary>What each batch leaves on record: values that steps kept, and the operator's answers.</summary>
internal static class BatchTables
{
    /// <summary>Nothing where no step of the site records and none asks.</summary>
    public static void Write(StringBuilder text, RunRecord record, SiteMetadata site)
    {
        if (site.Records.IsEmpty && site.Prompts.IsEmpty)
        {
            return;
        }

        text.Append("## Batch records\n\n");
        MarkdownTable table = new("unit", "batch", "started", "ended", "step or prompt", "what", "value", "time");
        foreach (BatchClosing batch in record.Batches)
        {
            string number = batch.Number.ToString(CultureInfo.InvariantCulture);
            string started = DurationWords.Clock(record.SecondsAt(batch.FromScan));
            string ended = batch.ToScan is long scan ? $"{batch.State} {DurationWords.Clock(record.SecondsAt(scan))}" : $"**open**, {batch.State}";
            foreach (BatchEntry entry in batch.Entries)
            {
                string time = entry.Scan is long at ? DurationWords.Clock(record.SecondsAt(at)) : "-";
                table.Add(batch.Unit, number, started, ended, entry.Step, entry.What, entry.Value, time);
            }
        }

        table.Append(text, "No batch was started, or none recorded anything.");
    }
}
