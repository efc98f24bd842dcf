using System.Globalization;
using Sequencer.Simulation.Records;
using Sequencer.Simulation.Running;
using Sequencer.Simulation.Tests.Tank;
using Sequencer.Testing;

namespace Sequencer.Simulation.Tests.Records;

public sealed class RunRecordCsvTests
{
    private const int GoldenRows = 40;

    [Fact]
    public void The_head_and_first_rows_are_the_golden_ones() =>
        GoldenFile.Matches(string.Join('\n', Csv(TankRun.Play(TankRun.Batch).Record).Split('\n').Take(GoldenRows)) + "\n", "tank-batch.verified.csv");

    [Fact]
    public void The_same_scenario_gives_the_same_bytes() =>
        Assert.Equal(Csv(TankRun.Play(TankRun.Batch).Record), Csv(TankRun.Play(TankRun.Batch).Record));

    [Fact]
    public void Every_row_has_a_field_for_every_column()
    {
        RunRecord record = TankRun.Play(TankRun.Batch).Record;
        string[] lines = Csv(record).Split('\n');
        Assert.Equal("", lines[^1]);
        Assert.Equal(record.Table.Rows + 2, lines.Length);
        Assert.All(lines[..^1], line => Assert.Equal(record.Columns.Length + 1, line.Split(',').Length));
    }

    [Fact]
    public void A_value_that_does_not_exist_leaves_its_field_empty_and_words_are_quoted()
    {
        RecordTable table = new(2);
        table.Add(3, [double.NaN, 1.23456789]);
        RunRecord record = new("x", 100, 4, [new("a,b", ColumnKind.Quantity, "pH", 2, ""), new("c", ColumnKind.Quantity, "", 4, "")], table);
        Assert.Equal("time s,\"a,b pH\",c\n0.3,,1.2346\n", Csv(record));
    }

    [Fact]
    public void Totals_of_time_agree_with_the_rows_where_every_scan_has_one()
    {
        ScenarioResult result = TankRun.Play(TankRun.Batch with { DurationSeconds = 40, Until = null });
        RunRecord record = result.Record;
        Assert.Equal(400, record.Table.Rows);
        int pump = record.Column("P101");
        double on = Enumerable.Range(0, record.Table.Rows).Sum(row => record.Table.Value(row, pump));
        Assert.Equal(record.Outputs.Single(output => output.Output == "P101").OnScans, (long)on);
    }

    private static string Csv(RunRecord record)
    {
        using StringWriter writer = new(CultureInfo.InvariantCulture);
        RunRecordCsv.Write(record, writer);
        return writer.ToString();
    }
}
