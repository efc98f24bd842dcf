using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json.Nodes;
using Sequencer.Export.Equivalence;
using Sequencer.Export.Exchange;
using Sequencer.Export.Lists;
using Sequencer.Export.Wiring;
using Sequencer.Export.Writing;
using Sequencer.Proof;
using Sequencer.Sites.Folders;
using Sequencer.Sites.Scenarios;
using Sequencer.Text;

namespace Sequencer.Sites.Stages;

/// <summary>The programs as structured text, read back, run beside the program and proved equal to it.</summary>
internal static class ExportStage
{
    private const int LockstepScans = 20_000;
    private const int LockstepSeed = 1;

    /// <summary>The demonstration sites need a small part of it; a text that differs may need more than anyone waits for.</summary>
    private static readonly ProofOptions Budget = ProofOptions.Default with { Conflicts = 500_000 };

    /// <summary>Why the site's text cannot be written in a dialect; null where it can.</summary>
    public static string? Refusal(LoadedSite site, TextDialect dialect)
    {
        (int least, string? name) = StructuredTextWriter.LeastNameLength(site.Programs);
        if (dialect.LongestName is not { } letters || letters >= least)
        {
            return null;
        }

        string reason = name is null
            ? "shorter ones could not be read"
            : $"units, inputs and outputs keep their names, and `{name}` has as many";
        return string.Create(CultureInfo.InvariantCulture, $"names of {letters} letters are too short for this site: {reason}; the least is {least}");
    }

    public static StageReport Run(LoadedSite site, ExportSettings settings, OutputFolder folder, CancellationToken cancellation)
    {
        TextDialect dialect = settings.Dialect;
        StructuredTextExport export = Write(site, dialect);
        string name = FileNames.Of(site.Description.Name) + ".st";
        folder.Keep(name, export.Text);
        if (settings.Exchange)
        {
            folder.Keep(FileNames.Of(site.Description.Name) + ".xml", ExchangeWriter.Write(site.Description.Name, site.Description.Revision, export.Text));
        }

        KeepLists(site, folder);
        int lines = export.Text.Count(character => character == '\n');
        ReadBackResult result = ReadBack.Run(site.System, export, LockstepScans, LockstepSeed, cancellation);
        ImmutableArray<(string Scenario, LockstepDifference? Difference)> runs = result.Agrees ? Runs(site, export, result, cancellation) : [];
        ImmutableArray<EqualityResult> equality = result.Agrees
            ? TextEquality.DecideAll(site.System, export, result.Systems, Budget, cancellation)
            : [];
        WiringResult? wiring = result.Agrees
            ? WiringCheck.Decide(export, result.Systems, new SourceText(name, export.Text), site.System.ScanMilliseconds, Budget, cancellation)
            : null;
        foreach (ProvedEqual proved in equality.OfType<ProvedEqual>())
        {
            folder.Keep(CertificateName(proved), proved.Certificate);
        }

        Outcome outcome = runs.Any(run => run.Difference is not null) ? Outcome.Fails : Judge(result, equality, wiring);
        return new StageReport(
            "export",
            outcome,
            string.Create(CultureInfo.InvariantCulture, $"{lines} lines of structured text in {name}{(dialect == TextDialect.Default ? "" : $" ({dialect.InWords()})")}, {Verdict(outcome)}"),
            [Words(result), .. runs.Select(Words), .. equality.Select(Words), .. wiring is null ? [] : WiringWords.Of(wiring)],
            Json(name, lines, result, runs, equality, wiring));
    }

    /// <summary>The inputs of each scenario that is played without the plant, as the runs are that the prover leaves, given to the text too.</summary>
    private static ImmutableArray<(string Scenario, LockstepDifference? Difference)> Runs(
        LoadedSite site, StructuredTextExport export, ReadBackResult result, CancellationToken cancellation) =>
    [
        .. from scenario in site.Scenarios
           where !scenario.Inputs.IsEmpty
           let trace = RecordedInputs.Of(site, scenario, cancellation)
           where trace is not null
           select (scenario.Name, ReadBack.Replay(site.System, export, result.Systems, trace, cancellation)),
    ];

    private static void KeepLists(LoadedSite site, OutputFolder folder)
    {
        ListTable[] lists = [SignalList.Of(site.Programs, site.Root), AlarmList.Of(site.Programs, site.System, site.Root)];
        string name = FileNames.Of(site.Description.Name);
        foreach (ListTable list in lists)
        {
            folder.Keep($"{name}-{list.Name}.csv", ListFiles.Csv(list));
        }

        folder.Keep($"{name}-lists.xlsx", ListFiles.Workbook(lists));
    }

    private static Outcome Judge(ReadBackResult result, ImmutableArray<EqualityResult> equality, WiringResult? wiring) =>
        !result.Agrees || wiring is null || equality.Any(unit => unit is ProvedDifferent) ? Outcome.Fails
        : equality.All(unit => unit is ProvedEqual) ? WiringWords.Judge(wiring)
        : WiringWords.Judge(wiring) == Outcome.Fails ? Outcome.Fails : Outcome.Undecided;

    private static string Verdict(Outcome outcome) => outcome switch
    {
        Outcome.Holds => "proved equal to the program",
        Outcome.Undecided => "not proved equal to the program",
        _ => "not the program",
    };

    private static string CertificateName(ProvedEqual proved) => $"certificates/export-{proved.Unit}.smt2";

    private static JsonObject Json(
        string name, int lines, ReadBackResult result, ImmutableArray<(string Scenario, LockstepDifference? Difference)> runs, ImmutableArray<EqualityResult> equality, WiringResult? wiring) => new()
        {
            ["file"] = name,
            ["lines"] = lines,
            ["lockstep"] = new JsonObject
            {
                ["scans"] = result.Scans,
                ["variables"] = result.Compared,
                ["agrees"] = result.Agrees,
                ["difference"] = result.Difference?.ToString(),
            },
            ["runs"] = new JsonArray([.. runs.Select(run => new JsonObject
        {
            ["scenario"] = run.Scenario,
            ["agrees"] = run.Difference is null,
            ["difference"] = run.Difference?.ToString(),
        })]),
            ["equality"] = new JsonArray([.. equality.Select(unit => new JsonObject
        {
            ["unit"] = unit.Unit,
            ["verdict"] = unit switch
            {
                ProvedEqual => "equal",
                ProvedDifferent => "different",
                _ => "undecided",
            },
            ["words"] = Words(unit),
            ["file"] = unit is ProvedEqual proved ? CertificateName(proved) : null,
        })]),
            ["wiring"] = wiring is null ? null : WiringWords.Json(wiring),
        };

    private static string Words(ReadBackResult result)
    {
        if (result.Agrees)
        {
            return string.Create(
                CultureInfo.InvariantCulture,
                $"read back and run beside the program on random inputs: {result.Scans} scans, {result.Compared} variables, no difference");
        }

        return result.Difference is { } difference
            ? $"the text does not do what the program does: {difference}"
            : $"the text cannot be read back: {string.Join("; ", result.Diagnostics.Select(diagnostic => diagnostic.Message))}";
    }

    private static string Words((string Scenario, LockstepDifference? Difference) run) => run.Difference is { } difference
        ? $"the text does not do what the program does in the scenario \"{run.Scenario}\": {difference}"
        : $"with the inputs of the scenario \"{run.Scenario}\" the text did the same in every scan";

    private static string Words(EqualityResult unit) => unit switch
    {
        ProvedEqual equal => string.Create(
            CultureInfo.InvariantCulture,
            $"{unit.Unit}: proved equal to the program in every scan of every run: {equal.Compared} outputs, alarms and variables; {CertificateName(equal)}"),
        ProvedDifferent different =>
            $"{unit.Unit}: the text does not do what the program does: {different.Difference}; program {different.InProgram}, text {different.InText}",
        EqualityUndecided undecided => $"{unit.Unit}: undecided whether the text does what the program does: {undecided.Reason}",
        _ => throw new System.Diagnostics.UnreachableException($"no words for {unit.GetType().Name}"),
    };

    internal static StructuredTextExport Write(LoadedSite site, TextDialect dialect) => StructuredTextWriter.Write(
        site.Programs, new ExportHeader(site.Description.Name, site.Description.Revision, site.MeaningHash), dialect);
}
