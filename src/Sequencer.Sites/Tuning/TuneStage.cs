using System.Globalization;
using System.Text.Json.Nodes;
using Sequencer.Language.Programs;
using Sequencer.Plant.Response;
using Sequencer.Simulation.Pictures;
using Sequencer.Sites.Folders;
using Sequencer.Sites.Stages;
using Sequencer.Text;

namespace Sequencer.Sites.Tuning;

/// <summary>Settings of doses from a recorded trend, as a change to review.</summary>
internal static class TuneStage
{
    /// <summary>Reads the file; null and a reason, with a place where there is one, where that cannot be done.</summary>
    public static TrendTable? Read(LoadedSite site, string file, out string reason)
    {
        DecodedText decoded;
        try
        {
            decoded = SourceDecoder.Decode(file.Replace('\\', '/'), File.ReadAllBytes(file), SiteFolder.LargestFileBytes);
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            reason = $"`{file}` cannot be read: {failure.Message}";
            return null;
        }

        DiagnosticBag diagnostics = new();
        diagnostics.AddRange(decoded.Diagnostics);
        HashSet<string> wanted = [.. Doses(site).SelectMany(dose => new[] { dose.Dose.Output.Tag, dose.Dose.Signal.Tag })];
        TrendTable? trend = decoded.Text is null ? null : TrendTableReader.Read(decoded.Text, wanted, diagnostics);
        reason = trend is null ? $"{DiagnosticRenderer.Render(diagnostics.InOrder())}\n`{file}` cannot be read as a trend: nothing was worked out, and nothing was written" : "";
        return trend;
    }

    public static StageReport Run(LoadedSite site, TrendTable trend, OutputFolder? folder)
    {
        List<string> lines = [];
        JsonArray json = [];
        ChangedClauses changes = new();
        DoseTrend[] tuned = [.. Doses(site).Select(dose => DoseTrend.Of(dose.Unit, dose.Step, dose.Dose, trend)).OfType<DoseTrend>()];
        foreach (DoseTrend dose in tuned)
        {
            DoseProposal[] proposals = [.. DoseSettings.Of(dose)];
            lines.AddRange(Words(dose));
            foreach (DoseProposal proposal in proposals)
            {
                bool put = proposal.IsChange && changes.Put(dose, proposal, site.Root);
                lines.Add($"  {(proposal.IsChange ? "change" : "fits"),-7} {proposal.Setting}: {(proposal.IsChange ? $"{proposal.Now} -> {proposal.Proposed}" : proposal.Now)}. {proposal.Reason}");
                if (proposal.IsChange && !put)
                {
                    lines.Add("          its words do not stand in the clause: a module takes them from where it is used");
                }
            }

            json.Add(Json(dose, proposals));
            Keep(dose, trend, folder);
        }

        lines.AddRange(Missing(site, trend, tuned));
        if (!changes.IsEmpty)
        {
            folder?.Keep("proposed.diff", changes.ToString());
            lines.Add(folder is null ? "the change as lines of the programs:" : "the change as lines of the programs, for review: proposed.diff; nothing in the site was changed");
            lines.AddRange(changes.ToString().TrimEnd('\n').Split('\n').Select(line => $"  {line}"));
        }

        lines.Add("A trend is one water on one day: try the change on water, look at the next batches, and prove the site again before it is used.");
        Outcome outcome = tuned.Length == 0 ? Outcome.Undecided : Outcome.Holds;
        string headline = tuned.Length == 0
            ? "the trend says nothing of any dose of the site"
            : string.Create(CultureInfo.InvariantCulture, $"{tuned.Length} {(tuned.Length == 1 ? "dose" : "doses")} in the trend, {(changes.IsEmpty ? "all settings fit" : "a change is proposed")}");
        return new StageReport("tune", outcome, headline, lines, new JsonObject { ["doses"] = json, ["diff"] = changes.ToString() });
    }

    private static IEnumerable<(UnitProgram Unit, Step Step, DoseAction Dose)> Doses(LoadedSite site) =>
        from unit in site.Programs.Units
        from step in unit.Steps
        from dose in step.Actions.OfType<DoseAction>()
        select (unit, step, dose);

    private static IEnumerable<string> Words(DoseTrend dose)
    {
        PulseResponse found = dose.Response;
        string unit = dose.Dose.Signal.Unit.Symbol;
        yield return string.Create(
            CultureInfo.InvariantCulture, $"{dose.Unit.Name} step {dose.Step.Number}: {dose.Dose.Output.Tag} toward {dose.Dose.Signal.Tag}, {found.Pulses.Length} pulses from {found.Pulses[0].Start:0} s on");
        yield return string.Create(
            CultureInfo.InvariantCulture,
            $"  dead time {found.Shape.DeadTimeSeconds:0.0} s (standard error {found.DeadTimeError:0.0}), lag {found.Shape.LagSeconds:0.0} s ({found.LagError:0.0}); {found.Before:0.00} to {found.After(found.Pulses.Length):0.00} {unit}; noise {found.Noise:0.000} {unit}");
    }

    /// <summary>Doses that nothing is said of, and why.</summary>
    private static IEnumerable<string> Missing(LoadedSite site, TrendTable trend, IReadOnlyList<DoseTrend> tuned)
    {
        foreach ((UnitProgram unit, Step step, DoseAction dose) in Doses(site).Where(dose => tuned.All(one => one.Dose != dose.Dose)))
        {
            string[] lacking = [.. new[] { dose.Output.Tag, dose.Signal.Tag }.Where(tag => trend.Find(tag) is null)];
            string why = lacking.Length > 0
                ? $"no column {string.Join(", ", lacking)}"
                : string.Create(CultureInfo.InvariantCulture, $"fewer than {PulseFit.FewestPulses} pulses within {PulseFit.LongestGap / 60.0:0} min of one another, or too few readings");
            yield return string.Create(CultureInfo.InvariantCulture, $"{unit.Name} step {step.Number}: {dose.Output.Tag} toward {dose.Signal.Tag}: nothing in the trend: {why}");
        }
    }

    private static void Keep(DoseTrend dose, TrendTable trend, OutputFolder? folder)
    {
        if (folder is null)
        {
            return;
        }

        using EmbeddedFont font = new();
        string name = FileNames.Of(FormattableString.Invariant($"{dose.Unit.Name}-step{dose.Step.Number}-{dose.Dose.Output.Tag}"));
        string title = FormattableString.Invariant($"{dose.Unit.Name} step {dose.Step.Number}: {dose.Dose.Signal.Tag} after pulses of {dose.Dose.Output.Tag}");
        ResponsePicture picture = new(title, dose.Dose.Signal.Unit.Symbol, trend.Seconds, trend.Find(dose.Dose.Signal.Tag)!.Values, dose.Response, font);
        folder.Keep($"{name}.svg", picture.Svg());
        folder.Keep($"{name}.png", picture.Png());
    }

    private static JsonObject Json(DoseTrend dose, IEnumerable<DoseProposal> proposals) => new()
    {
        ["unit"] = dose.Unit.Name,
        ["step"] = dose.Step.Number,
        ["output"] = dose.Dose.Output.Tag,
        ["reading"] = dose.Dose.Signal.Tag,
        ["pulses"] = dose.Response.Pulses.Length,
        ["dead_time_s"] = dose.Response.Shape.DeadTimeSeconds,
        ["dead_time_standard_error_s"] = dose.Response.DeadTimeError,
        ["lag_s"] = dose.Response.Shape.LagSeconds,
        ["lag_standard_error_s"] = dose.Response.LagError,
        ["noise"] = dose.Response.Noise,
        ["settings"] = new JsonArray([.. proposals.Select(proposal => (JsonNode)new JsonObject
        {
            ["setting"] = proposal.Setting,
            ["now"] = proposal.Now,
            ["proposed"] = proposal.Proposed,
            ["reason"] = proposal.Reason,
        })]),
    };
}
