using System.Collections.Immutable;
using System.Text.Json.Nodes;
using Sequencer.Control.TransitionSystems;
using Sequencer.Proof;
using Sequencer.Proof.Certificates;
using Sequencer.Simulation.Traces;
using Sequencer.Sites.Folders;
using Sequencer.Sites.Traces;

namespace Sequencer.Sites.Stages;

/// <summary>What is shown and kept of one verdict: a certificate where it holds, a run where it fails, the reason where undecided.</summary>
internal sealed class RequirementEvidence
{
    private readonly Requirement _requirement;
    private readonly Verdict _verdict;
    private readonly FailingRun? _run;
    private readonly string? _file;

    private RequirementEvidence(Requirement requirement, Verdict verdict, FailingRun? run, string? file)
    {
        _requirement = requirement;
        _verdict = verdict;
        _run = run;
        _file = file;
    }

    /// <param name="site">The site, whose names are told.</param>
    /// <param name="system">What the verdict is about.</param>
    /// <param name="requirement">One of the system's requirements.</param>
    /// <param name="verdict">Its verdict.</param>
    /// <param name="folder">Where certificates and runs go; null is nowhere.</param>
    /// <param name="cancellation">Leaves a run as it was found.</param>
    public static RequirementEvidence Of(
        LoadedSite site, TransitionSystem system, Requirement requirement, Verdict verdict, OutputFolder? folder, CancellationToken cancellation)
    {
        FailingRun? run = verdict is Fails fails
            ? FailingRun.Of(site, system, TraceEnd.Broken(requirement), requirement, fails.Trace, fails.IsShortest, cancellation)
            : null;
        return new RequirementEvidence(requirement, verdict, run, Keep(system, requirement, verdict, run, folder));
    }

    /// <summary>
    /// Writes the certificate or the trace. The certificate is read back and compared with the system
    /// before it counts: a defect of ours must not look like evidence.
    /// </summary>
    private static string? Keep(TransitionSystem system, Requirement requirement, Verdict verdict, FailingRun? run, OutputFolder? folder)
    {
        switch (verdict)
        {
            case Holds holds:
                ImmutableArray<Assumption> leanedOn =
                    [.. system.Assumptions.Where(assumption => holds.Assumptions.Contains(assumption.Name))];
                string certificate = CertificateWriter.Write(system, requirement, holds.Invariant, leanedOn);
                CertificateFinding finding = CertificateChecker.Check(system, requirement, certificate);
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

    public IEnumerable<string> Lines()
    {
        yield return $"{Word(_verdict),-9} {_requirement.Name,-4} {_requirement.Title}: {_requirement.Statement}";
        switch (_verdict)
        {
            case Holds { Assumptions.Length: > 0 } holds:
                yield return $"          taken for granted: {string.Join(", ", holds.Assumptions)}";
                break;
            case Fails when _run is not null:
                yield return $"          {_requirement.Origin.Span}";
                foreach (string line in _run.Words.Split('\n', StringSplitOptions.RemoveEmptyEntries))
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

    public JsonObject Json() => new()
    {
        ["name"] = _requirement.Name,
        ["title"] = _requirement.Title,
        ["statement"] = _requirement.Statement,
        ["verdict"] = Word(_verdict).Trim(),
        ["evidence"] = _verdict switch
        {
            Holds => "inductive invariant",
            Fails { IsShortest: true } => "shortest trace, replayed",
            Fails => "trace, replayed",
            _ => "none",
        },
        ["engine"] = _verdict switch
        {
            Holds holds => holds.Engine,
            Fails fails => fails.Engine,
            _ => null,
        },
        ["assumptions"] = new JsonArray([.. (_verdict is Holds proved ? proved.Assumptions : []).Select(name => JsonValue.Create(name))]),
        ["reason"] = (_verdict as Undecided)?.Words,
        ["file"] = _file,
    };

    private static string Word(Verdict verdict) => verdict switch
    {
        Holds => "holds",
        Fails => "FAILS",
        _ => "undecided",
    };
}
