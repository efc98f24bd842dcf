using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json.Nodes;
using Sequencer.Control.TransitionSystems;
using Sequencer.Proof;
using Sequencer.Proof.Certificates;
using Sequencer.Proof.Traces;
using Sequencer.Simulation.Traces;
using Sequencer.Sites.Folders;

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
        ImmutableArray<InputRest> rests = [.. TraceInputs.Of(site.System, site.Metadata).Select(input => new InputRest(input.Rest, input.IsMomentary))];
        foreach ((Requirement requirement, Verdict found) in site.System.Requirements.Zip(verdicts))
        {
            Verdict verdict = found is Fails failing
                ? failing with { Trace = TraceTidying.Tidy(site.System, requirement, failing.Trace, rests, cancellation) }
                : found;
            string? file = Evidence(site, requirement, verdict, folder);
            lines.AddRange(Lines(site, requirement, verdict));
            requirements.Add(Json(requirement, verdict, file));
        }

        int holds = verdicts.Count(verdict => verdict is Holds);
        int fails = verdicts.Count(verdict => verdict is Fails);
        int undecided = verdicts.Length - holds - fails;
        Outcome outcome = fails > 0 ? Outcome.Fails : undecided > 0 ? Outcome.Undecided : Outcome.Holds;
        string headline = string.Create(
            CultureInfo.InvariantCulture, $"{holds} of {verdicts.Length} requirements hold, {fails} fail, {undecided} undecided");
        return new StageReport("prove", outcome, headline, lines, new JsonObject { ["requirements"] = requirements });
    }

    /// <summary>
    /// Writes the certificate or the trace. The certificate is read back and compared with the system
    /// before it counts: a defect of ours must not look like evidence.
    /// </summary>
    private static string? Evidence(LoadedSite site, Requirement requirement, Verdict verdict, OutputFolder? folder)
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
            case Fails fails:
                return Save(folder, $"traces/{requirement.Name}.txt", TraceWords.Write(site.System, requirement, fails));
            default:
                return null;
        }
    }

    private static string? Save(OutputFolder? folder, string name, string content)
    {
        folder?.Keep(name, content);
        return folder is null ? null : name;
    }

    private static IEnumerable<string> Lines(LoadedSite site, Requirement requirement, Verdict verdict)
    {
        yield return $"{Word(verdict),-9} {requirement.Name,-4} {requirement.Title}: {requirement.Statement}";
        switch (verdict)
        {
            case Holds { Assumptions.Length: > 0 } holds:
                yield return $"          taken for granted: {string.Join(", ", holds.Assumptions)}";
                break;
            case Fails fails:
                yield return $"          {requirement.Origin.Span}";
                foreach (string line in TraceWords.Write(site.System, requirement, fails).Split('\n', StringSplitOptions.RemoveEmptyEntries))
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
