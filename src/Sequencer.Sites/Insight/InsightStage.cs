using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using System.Text.Json.Nodes;
using Sequencer.Control.TransitionSystems;
using Sequencer.Lowering.Supposing;
using Sequencer.Proof;
using Sequencer.Proof.Reaching;
using Sequencer.Simulation.Traces;
using Sequencer.Sites.Folders;
using Sequencer.Sites.Stages;
using Sequencer.Sites.Traces;

namespace Sequencer.Sites.Insight;

/// <summary>What a hazard study wants to know beyond the verdicts; <c>spec/insight.md</c> says what each page claims.</summary>
internal static class InsightStage
{
    public static StageReport Run(
        LoadedSite site,
        ImmutableArray<Verdict> verdicts,
        ImmutableArray<GoalVerdict> ways,
        OutputFolder? folder,
        IProgress<StageProgress> progress,
        CancellationToken cancellation)
    {
        Questions questions = new(site.System, progress, cancellation);
        ImmutableArray<Protection> protections = ProtectionList.Of(site.Programs);

        // Ways to each step, and runs in which something happens, come first: they are where other runs begin.
        questions.Learn(ways.OfType<Reached>().Select(way => way.Way));
        ImmutableArray<Occurrence> occurrences = Occurrences.Of(site.Programs, questions);
        ImmutableArray<(Requirement Requirement, LeansOn? Found)> leanings = Leanings.Of(site.Programs, site.System, verdicts, questions);
        ImmutableArray<Removal> removals = Removals.Of(site.Programs, [.. leanings.Select(one => one.Found).OfType<LeansOn>()], questions);

        ImmutableArray<SingleFailure> failures = SingleFailures.Of(site.Programs, [.. verdicts.OfType<Holds>()], questions);

        folder?.Keep(LeaningPage.Name, LeaningPage.Write(site, leanings));
        folder?.Keep(RemovalPage.Name, RemovalPage.Write(site, protections, removals));
        folder?.Keep(SingleFailurePage.Name, SingleFailurePage.Write(site, failures));
        folder?.Keep(OccurrencePage.Name, OccurrencePage.Write(site, occurrences));
        KeepRuns(site, removals, failures, folder, cancellation);
        foreach (StepSheet sheet in StepSheet.Of(site.Programs, site.System, verdicts, questions, cancellation))
        {
            folder?.Keep(StepPage.NameOf(sheet.Unit, "md"), StepPage.Write(site, sheet));
            folder?.Keep(StepPage.NameOf(sheet.Unit, "csv"), StepPage.Csv(sheet));
        }

        int idle = protections.Count(protection => removals.All(removal => removal.Protection != protection));
        int vacuous = occurrences.Where(one => one.Happens == false).Select(one => one.Requirement).Distinct(StringComparer.Ordinal).Count();
        List<string> lines =
        [
            Line($"{removals.Where(one => one.Verdict is Fails).Select(one => one.Protection).Distinct().Count()} of {protections.Length} protections are needed by a requirement, which fails without them"),
            Line($"{idle} protections are needed by no requirement, see {RemovalPage.Name}"),
            Line($"{failures.Where(one => one.Verdict is Fails).Select(one => one.Requirement.Name).Distinct(StringComparer.Ordinal).Count()} requirements are defeated by a single failure, see {SingleFailurePage.Name}"),
            Line($"{vacuous} requirements are vacuous, see {OccurrencePage.Name}"),
        ];
        JsonObject json = new()
        {
            ["leansOn"] = LeaningPage.Json(leanings),
            ["protections"] = RemovalPage.Json(protections, removals),
            ["singleFailures"] = SingleFailurePage.Json(site.Programs, failures),
            ["occurrences"] = OccurrencePage.Json(occurrences),
        };
        string headline = vacuous == 0 ? "no requirement is vacuous" : Line($"{vacuous} requirements are vacuous");
        return new StageReport("insight", Outcome.Holds, headline, lines, json);
    }

    private static void KeepRuns(
        LoadedSite site, ImmutableArray<Removal> removals, ImmutableArray<SingleFailure> failures, OutputFolder? folder, CancellationToken cancellation)
    {
        foreach (IGrouping<Protection, Removal> group in removals.Where(removal => removal.Verdict is Fails).GroupBy(removal => removal.Protection))
        {
            Keep($"without-{group.Key.Name}", [.. group.Select(one => ($"Without {group.Key.Name} \"{group.Key.Title}\"", one.System, one.Requirement, (Fails)one.Verdict))]);
        }

        foreach (IGrouping<Failure, SingleFailure> group in failures.Where(one => one.Verdict is Fails).GroupBy(one => one.Failure))
        {
            string how = SingleFailurePage.How(site.Programs, group.Key);
            Keep($"{group.Key.Tag}-{FileNames.Of(how)}", [.. group.Select(one => ($"When {group.Key.Tag} {how}", one.System, one.Requirement, (Fails)one.Verdict))]);
        }

        void Keep(string name, (string When, TransitionSystem System, Requirement Requirement, Fails Fails)[] runs)
        {
            StringBuilder text = new();
            foreach ((string when, TransitionSystem system, Requirement requirement, Fails fails) in runs)
            {
                text.Append($"{when}, {requirement.Name} \"{requirement.Title}\" fails:\n");
                text.Append(FailingRun.Of(site, system, TraceEnd.Broken(requirement), requirement, fails.Trace, fails.IsShortest, cancellation).Words).Append('\n');
            }

            folder?.Keep($"insight/runs/{name}.txt", text.ToString());
        }
    }

    private static string Line(FormattableString words) => words.ToString(CultureInfo.InvariantCulture);
}
