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
    private readonly string? _certificate;
    private string? _file;

    private RequirementEvidence(Requirement requirement, Verdict verdict, FailingRun? run, string? certificate)
    {
        _requirement = requirement;
        _verdict = verdict;
        _run = run;
        _certificate = certificate;
    }

    /// <summary>The evidence of each requirement, in order, kept in the folder.</summary>
    /// <param name="site">The site, whose names are told.</param>
    /// <param name="system">What the verdicts are about.</param>
    /// <param name="requirements">Requirements of the system.</param>
    /// <param name="verdicts">Their verdicts.</param>
    /// <param name="folder">Where certificates and runs go; null is nowhere.</param>
    /// <param name="degree">How many are made at once.</param>
    /// <param name="cancellation">Leaves a run as it was found.</param>
    public static ImmutableArray<RequirementEvidence> OfAll(
        LoadedSite site, TransitionSystem system, ImmutableArray<Requirement> requirements, ImmutableArray<Verdict> verdicts, OutputFolder? folder, int degree, CancellationToken cancellation)
    {
        RequirementEvidence[] all = new RequirementEvidence[requirements.Length];
        Parallel.For(0, all.Length, new ParallelOptions { MaxDegreeOfParallelism = degree }, index => all[index] = Of(site, system, requirements[index], verdicts[index], folder is not null, cancellation));
        Array.ForEach(all, evidence => evidence.Keep(folder));
        return [.. all];
    }

    private static RequirementEvidence Of(LoadedSite site, TransitionSystem system, Requirement requirement, Verdict verdict, bool certified, CancellationToken cancellation) => verdict switch
    {
        Holds holds when certified => new RequirementEvidence(requirement, verdict, null, Certificate(system, requirement, holds)),
        Fails fails => new RequirementEvidence(
            requirement, verdict, FailingRun.Of(site, system, TraceEnd.Broken(requirement), requirement, fails.Trace, fails.IsShortest, cancellation), null),
        _ => new RequirementEvidence(requirement, verdict, null, null),
    };

    /// <summary>Read back and compared with the system before it counts: a defect of ours must not look like evidence.</summary>
    public static string Certificate(TransitionSystem system, Requirement requirement, Holds holds)
    {
        ImmutableArray<Assumption> leanedOn = [.. system.Assumptions.Where(assumption => holds.Assumptions.Contains(assumption.Name))];
        string certificate = CertificateWriter.Write(system, requirement, holds.Invariant, leanedOn);
        CertificateFinding finding = CertificateChecker.Check(system, requirement, certificate);
        return finding.IsAccepted ? certificate : throw new InvalidOperationException($"the certificate of {requirement.Name} is refused: {finding.Reason}");
    }

    private void Keep(OutputFolder? folder)
    {
        if (folder is not null && _certificate is not null)
        {
            _file = $"certificates/{_requirement.Name}.smt2";
            folder.Keep(_file, _certificate);
        }
        else if (folder is not null)
        {
            _file = _run?.Keep(folder);
        }
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
