using System.Text;
using MiniExcelLibs;
using Sequencer.Export.Lists;
using Sequencer.Sites.Folders;
using Sequencer.Testing;
using Sequencer.Text;

namespace Sequencer.Sites.Tests.Lists;

/// <summary>What is wired and what alarms, as lists for people who work with spreadsheets.</summary>
public sealed class ListTests
{
    private static readonly Lazy<LoadedSite> Fernhollow = new(() => SiteLoader.Load(new SiteFolder(RepositoryPath.Site("fernhollow")), new DiagnosticBag())
        ?? throw new InvalidOperationException("the site does not check"));

    private static ListTable Signals => SignalList.Of(Fernhollow.Value.Programs, RepositoryPath.Site("fernhollow") + "/");

    private static ListTable Alarms => AlarmList.Of(Fernhollow.Value.Programs, Fernhollow.Value.System, RepositoryPath.Site("fernhollow") + "/");

    [Fact]
    public void Signals_are_listed_by_address() => GoldenFile.Matches(Encoding.UTF8.GetString(ListFiles.Csv(Signals)), "fernhollow-signals.verified.csv");

    [Fact]
    public void Alarms_are_listed_with_what_the_author_says_of_them() => GoldenFile.Matches(Encoding.UTF8.GetString(ListFiles.Csv(Alarms)), "fernhollow-alarms.verified.csv");

    [Fact]
    public void Each_signal_and_each_alarm_has_its_row()
    {
        Assert.Equal(
            Fernhollow.Value.Programs.Units.Sum(unit => unit.AnalogueInputs.Length + unit.SwitchInputs.Length + unit.Outputs.Length + unit.AnalogueOutputs.Length), Signals.Rows.Length);
        Assert.Equal(Fernhollow.Value.System.Alarms.Length, Alarms.Rows.Length);
        HashSet<string> units = [.. Fernhollow.Value.Programs.Units.Select(unit => unit.Name)];
        Assert.All(Alarms.Rows, row => Assert.Contains(row[0], units));
        Assert.All([Signals, Alarms], table => Assert.All(table.Rows, row => Assert.Equal(table.Columns.Length, row.Length)));
    }

    [Fact]
    public void The_workbook_says_the_same_on_a_sheet_each_and_is_the_same_each_time()
    {
        byte[] workbook = ListFiles.Workbook([Signals, Alarms]);
        Assert.Equal(workbook, ListFiles.Workbook([Signals, Alarms]));
        foreach (ListTable table in (ListTable[])[Signals, Alarms])
        {
            using MemoryStream file = new(workbook);
            IDictionary<string, object?>[] rows = [.. file.Query(sheetName: table.Name).Cast<IDictionary<string, object?>>()];
            Assert.Equal(table.Columns, rows[0].Values.Select(value => value?.ToString() ?? ""));
            Assert.Equal(table.Rows.Length, rows.Length - 1);
            Assert.All(table.Rows.Zip(rows.Skip(1)), pair => Assert.Equal(pair.First, pair.Second.Values.Select(value => value?.ToString() ?? "")));
        }
    }
}
