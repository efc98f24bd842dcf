using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json.Nodes;
using Sequencer.Control.TransitionSystems;
using Sequencer.Proof;
using Sequencer.Proof.Certificates;
using Sequencer.Sites.Folders;
using Sequencer.Sites.Traces;

namespace Sequencer.Sites.Stages;

/// <summary>Every requirement decided: a certificate where it holds, a trace where it fails, the reason where undecided.</summary>
internal static class ProofStage
{
    /// <summary>Requirements decided at a time; a verdict does not depend on it.</summary>
    private const int Degree = 2;

    public static StageReport Run(LoadedSite site, OutputFolder? folder, IProgress<StageProgress> progress, CancellationToken cancellation) =>
        Run(site, folder, progress, cancellation, out _);

    public static StageReport Run(
        LoadedSite site, OutputFolder? folder, IProgress<StageProgress> progress, CancellationToken cancellation, out ImmutableArray<Verdict> verdicts)
    {
        verdicts = Prover.DecideAll(
            site.System, ProofOptions.Default, Degree, new Words(progress), cancellation);
        List<string> lines = [];
        JsonArray requirements = [];
        foreach ((Requirement requirement, Verdict verdict) in site.System.Requirements.Zip(verdicts))
        {
            FailingRun? run = verdict is Fails fails ? FailingRun.Of(site, requirement, fails, cancellation) : null;
            string? file = Evidence(site, requirement, verdict, run, folder);
            lines.AddRange(Lines(requirement, verdict, run));
            requirements.Add(Json(requirement, verdict, file));
        }

        int holds = verdicts.Count(verdict => verdict is Holds);
        int failing = verdicts.Count(verdict => verdict is Fails);
        int undecided = verdicts.Length - holds - failing;
        Outcome outcome = failing > 0 ? Outcome.Fails : undecided > 0 ? Outcome.Undecided : Outcome.Holds;
        string headline = string.Create(
            CultureInfo.InvariantCulture, $"{holds} of {verdicts.Length} requirements hold, {failing} fail, {undecided} undecided");
        return new StageReport("prove", outcome, headline, lines, new JsonObject { ["requirements"] = requirements });
    }

    /// <summary>
    /// Writes the certificate or the trace. The certificate is read back and compared with the system
    /// before it counts: a defect of ours must not look like evidence.
    /// </summary>
    private static string? Evidence(LoadedSite site, Requirement requirement, Verdict verdict, FailingRun? run, OutputFolder? folder)
    {
        switch (verdict)
        {
            case Holds holds:
                ImmutableArray<Assumption> leanedOn =
                    [.. site.System.Assumptions.Where(assumption => holds.Assumptions.Contains(assumption.Name))];
                string certificate = CertificateWriter.Write(site.System, requirement, holds.Invariant, leanedOn);
                CertificateFinding finding = CertificateChecker.Check(site.System, requirement, certificate);
                if (!finding.IsAccepted)
                {
                    throw new InvalidOperationException($"the certificate of {requirement.Name} is refused: {finding.Reason}");
                }

                return Save(folder, $"certificates/{requirement.Name}.smt2", certificate);
            default:
                return run is null || folder is null ? null : run.Keep(folder);
        }
    }

    private static string? Save(OutputFolder? folder, string name, string content)
    {
        folder?.Keep(name, content);
        return folder is null ? null : name;
    }

    private static IEnumerable<string> Lines(Requirement requirement, Verdict verdict, FailingRun? run)
    {
        yield return $"{Word(verdict),-9} {requirement.Name,-4} {requirement.Title}: {requirement.Statement}";
        switch (verdict)
        {
            case Holds { Assumptions.Length: > 0 } holds:
                yield return $"          taken for granted: {string.Join(", ", holds.Assumptions)}";
                break;
            case Fails when run is not null:
                yield return $"          {requirement.Origin.Span}";
                foreach (string line in run.Words.Split('\n', StringSplitOptions.RemoveEmptyEntries))
                {
                    yield return $"          {line}";
                }

                break;
            case Undecided undecided:
                yield return $"          {undecided.Words}";
                break;
            default:
                break;
        }
    }

    private static JsonObject Json(Requirement requirement, Verdict verdict, string? file) => new()
    {
        ["name"] = requirement.Name,
        ["title"] = requirement.Title,
        ["statement"] = requirement.Statement,
        ["verdict"] = Word(verdict).Trim(),
        ["evidence"] = verdict switch
        {
            Holds => "inductive invariant",
            Fails { IsShortest: true } => "shortest trace, replayed",
            Fails => "trace, replayed",
            _ => "none",
        },
        ["engine"] = verdict switch
        {
            Holds holds => holds.Engine,
            Fails fails => fails.Engine,
            _ => null,
        },
        ["assumptions"] = new JsonArray([.. (verdict is Holds proved ? proved.Assumptions : []).Select(name => JsonValue.Create(name))]),
        ["reason"] = (verdict as Undecided)?.Words,
        ["file"] = file,
    };

    private static string Word(Verdict verdict) => verdict switch
    {
        Holds => "holds",
        Fails => "FAILS",
        _ => "undecided",
    };

    private sealed class Words(IProgress<StageProgress> progress) : IProgress<ProofProgress>
    {
        public void Report(ProofProgress value) => progress.Report(new StageProgress(
            "prove", string.Create(CultureInfo.InvariantCulture, $"{value.Requirement}: {value.Engine}, depth {value.Depth}")));
    }
}
