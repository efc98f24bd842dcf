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
        HashSet<string> steps = [.. Doses(site).Select(dose => DoseTrend.StepsColumn(dose.Unit))];
        TrendTable? trend = decoded.Text is null ? null : TrendTableReader.Read(decoded.Text, wanted, steps, diagnostics);
        reason = trend is null ? $"{DiagnosticRenderer.Render(diagnostics.InOrder())}\n`{file}` cannot be read as a trend: nothing was worked out, and nothing was written" : "";
        return trend;
    }

    public static StageReport Run(LoadedSite site, TrendTable trend, OutputFolder? folder)
    {
        List<string> lines = [];
        List<string> missing = [];
        JsonArray json = [];
        ChangedClauses changes = new();
        List<DoseProposal> all = [];
        int tuned = 0;
        foreach ((UnitProgram unit, Step step, DoseAction action) in Doses(site))
        {
            if (DoseTrend.Of(unit, step, action, trend, out string why) is not { } dose)
            {
                missing.Add(string.Create(CultureInfo.InvariantCulture, $"{unit.Name} step {step.Number}: {action.Output.Tag} toward {action.Signal.Tag}: nothing in the trend: {why}"));
                continue;
            }

            tuned++;
            DoseProposal[] proposals = [.. DoseSettings.Of(dose)];
            all.AddRange(proposals);
            lines.AddRange(TuneWords.Of(dose));
            foreach (DoseProposal proposal in proposals)
            {
                bool put = proposal.IsChange && changes.Put(dose, proposal, site.Root);
                lines.AddRange(TuneWords.Of(proposal, put));
            }

            json.Add(TuneWords.Json(dose, proposals));
            Keep(dose, trend, folder);
        }

        lines.AddRange(missing);
        if (!changes.IsEmpty)
        {
            folder?.Keep("proposed.diff", changes.ToString());
            lines.Add(folder is null ? "the change as lines of the programs:" : "the change as lines of the programs, for review: proposed.diff; nothing in the site was changed");
            lines.AddRange(changes.ToString().TrimEnd('\n').Split('\n').Select(line => $"  {line}"));
        }

        lines.AddRange(TuneWords.Cautions);
        return new StageReport("tune", TuneWords.Outcome(tuned, all), TuneWords.Headline(tuned, all), lines, new JsonObject
        {
            ["doses"] = json,
            ["nothing_of"] = new JsonArray([.. missing.Select(line => JsonValue.Create(line))]),
            ["diff"] = changes.ToString(),
            ["cautions"] = new JsonArray([.. TuneWords.Cautions.Select(line => JsonValue.Create(line))]),
        })
        {
            Verdict = TuneWords.Verdict(tuned, all),
        };
    }

    private static IEnumerable<(UnitProgram Unit, Step Step, DoseAction Dose)> Doses(LoadedSite site) =>
        from unit in site.Programs.Units
        from step in unit.Steps
        from dose in step.Actions.OfType<DoseAction>()
        select (unit, step, dose);

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
}
