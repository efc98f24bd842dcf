using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json.Nodes;
using Sequencer.Plant.Response;

namespace Sequencer.Sites.Tuning;

/// <summary>What was found in a trend and what is proposed, for a person and for a machine.</summary>
internal static class TuneWords
{
    public static ImmutableArray<string> Cautions { get; } =
    [
        "A trend is one water on one day. A change is for review: try it on water, look at the next batches, and prove the site again (sequencer verify) before it goes into a controller.",
        "Limits and the no-response figure are protections: a longer limit, more pulses without a response or a smaller movement that counts as one let more reagent in before a fault is noticed.",
    ];

    public static Outcome Outcome(int doses, IReadOnlyCollection<DoseProposal> proposals) =>
        doses == 0 || proposals.Any(proposal => proposal.Judgement == Judgement.Undecided) ? Sites.Outcome.Undecided : Sites.Outcome.Holds;

    public static string Headline(int doses, IReadOnlyCollection<DoseProposal> proposals)
    {
        if (doses == 0)
        {
            return "the trend says nothing of any dose of the site";
        }

        string[] parts =
        [
            .. new[]
            {
                Counted(proposals, Judgement.Fits, "fits", "fit"),
                Counted(proposals, Judgement.Change, "has a change proposed", "have a change proposed"),
                Counted(proposals, Judgement.Undecided, "is undecided", "are undecided"),
            }.OfType<string>(),
        ];
        int weaker = proposals.Count(proposal => proposal.Weakens is not null);
        return Text($"{doses} {(doses == 1 ? "dose" : "doses")} in the trend; of {proposals.Count} settings {string.Join(", ", parts)}{(weaker > 0 ? Text($"; {weaker} of the changes would weaken a protection") : "")}");
    }

    public static string Verdict(int doses, IReadOnlyCollection<DoseProposal> proposals)
    {
        string what = doses == 0 ? "THE TREND SAYS NOTHING OF ANY DOSE" : Outcome(doses, proposals) == Sites.Outcome.Undecided
            ? proposals.Any(proposal => proposal.IsChange) ? "THE TREND LEAVES SETTINGS UNDECIDED; OTHERS HAVE A CHANGE PROPOSED FOR REVIEW" : "THE TREND LEAVES SETTINGS UNDECIDED"
            : proposals.Any(proposal => proposal.IsChange) ? "A CHANGE IS PROPOSED FOR REVIEW" : "ALL SETTINGS FIT THE TREND";
        return $"{what}; NOTHING WAS CHANGED OR PROVED";
    }

    public static IEnumerable<string> Of(DoseTrend dose)
    {
        PulseResponse found = dose.Response;
        string unit = dose.Dose.Signal.Unit.Symbol;
        string pulses = found.Pulses.Length == dose.Given.Length ? Text($"{dose.Given.Length} pulses") : Text($"{dose.Given.Length} pulses, of which the last {found.Pulses.Length} in one series");
        yield return Text($"{dose.Unit.Name} step {dose.Step.Number}: {dose.Dose.Output.Tag} toward {dose.Dose.Signal.Tag}, {pulses} from {found.Pulses[0].Start:0} s on");
        yield return Text($"  dead time {Time(found.DeadTimeSeconds)}, lag {Time(found.LagSeconds)}; {found.Before:0.00} to {found.After(found.Pulses.Length):0.00} {unit}; left between record and model {found.Noise:0.000} {unit}, taken as noise");
    }

    public static IEnumerable<string> Of(DoseProposal proposal, bool put)
    {
        string word = proposal.Judgement switch { Judgement.Fits => "fits", Judgement.Change => "change", _ => "undecided" };
        string figure = proposal.IsChange ? $"{proposal.Now} -> {proposal.Proposed}" : proposal.Judgement == Judgement.Undecided ? $"{proposal.Now} stays" : proposal.Now;
        yield return $"  {word,-9} {proposal.Setting}: {figure}{(proposal.Range is { } range ? $"; by the trend {range}" : "")}";
        yield return $"            {proposal.Reason}";
        if (proposal.Weakens is { } weakens)
        {
            yield return $"            WEAKENS A PROTECTION: {weakens}";
        }

        if (proposal.IsChange && !put)
        {
            yield return "            not in the changed lines: the figure does not stand in the clause, as where a module takes it from where it is used";
        }
    }

    public static JsonObject Json(DoseTrend dose, IEnumerable<DoseProposal> proposals) => new()
    {
        ["unit"] = dose.Unit.Name,
        ["step"] = dose.Step.Number,
        ["output"] = dose.Dose.Output.Tag,
        ["reading"] = dose.Dose.Signal.Tag,
        ["pulses"] = dose.Given.Length,
        ["pulses_fitted"] = dose.Response.Pulses.Length,
        ["dead_time_s"] = dose.Response.DeadTimeSeconds.Value,
        ["dead_time_standard_error_s"] = dose.Response.DeadTimeSeconds.StandardError,
        ["dead_time_determined"] = dose.Response.DeadTimeSeconds.IsDetermined,
        ["lag_s"] = dose.Response.LagSeconds.Value,
        ["lag_standard_error_s"] = dose.Response.LagSeconds.StandardError,
        ["lag_determined"] = dose.Response.LagSeconds.IsDetermined,
        ["not_determined"] = DoseSettings.NotDetermined(dose.Response),
        ["noise"] = dose.Response.Noise,
        ["settings"] = new JsonArray([.. proposals.Select(proposal => (JsonNode)new JsonObject
        {
            ["setting"] = proposal.Setting,
            ["verdict"] = proposal.Judgement switch { Judgement.Fits => "fits", Judgement.Change => "change", _ => "undecided" },
            ["now"] = proposal.Now,
            ["proposed"] = proposal.IsChange ? proposal.Proposed : null,
            ["range"] = proposal.Range is { } range ? new JsonObject { ["low"] = range.Low, ["high"] = range.High, ["unit"] = range.Unit } : null,
            ["reason"] = proposal.Reason,
            ["weakens_a_protection"] = proposal.Weakens,
        })]),
    };

    private static string? Counted(IReadOnlyCollection<DoseProposal> proposals, Judgement judgement, string one, string many) => proposals.Count(proposal => proposal.Judgement == judgement) switch
    {
        0 => null,
        1 => $"1 {one}",
        int count => Text($"{count} {many}"),
    };

    private static string Time(Estimate time) => Text($"{time.Value:0.0} s (standard error {time.StandardError:0.0}{(time.IsDetermined ? "" : ": NOT DETERMINED")})");

    private static string Text(FormattableString words) => words.ToString(CultureInfo.InvariantCulture);
}
