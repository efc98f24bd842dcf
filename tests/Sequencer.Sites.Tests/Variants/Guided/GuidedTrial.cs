using System.Collections.Immutable;
using System.Globalization;
using Sequencer.Control.Execution;
using Sequencer.Control.Traces;
using Sequencer.Control.TransitionSystems;
using Sequencer.Proof;
using Sequencer.Proof.Remembering;
using Sequencer.Text;

namespace Sequencer.Sites.Tests.Variants.Guided;

/// <summary>
/// Gives variants of a site to random runs and to the prover, and sets the one against the other: what a run breaks the prover must
/// not call kept, and what it refutes must break again in the interpreter.
/// </summary>
internal sealed class GuidedTrial
{
    /// <summary>For one requirement, and for all of a variant together; those not finished by then are undecided.</summary>
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(3);

    private static readonly TimeSpan PatienceForAll = TimeSpan.FromMinutes(6);

    private readonly SiteFiles _site;
    private readonly long _scans;
    private readonly LoadedSite _unbroken;
    private readonly ImmutableArray<InputScript> _scripts;
    private readonly Dictionary<string, string> _proved = new(StringComparer.Ordinal);
    private readonly Dictionary<string, string> _invariants = new(StringComparer.Ordinal);

    public GuidedTrial(SiteFiles site, long scans)
    {
        _site = site;
        _scans = scans;
        _unbroken = site.Load();
        _scripts = site.Scripts(_unbroken);
    }

    /// <summary>What random runs break of the whole site as it is.</summary>
    public GuidedResult OfUnbroken(int seed)
    {
        LoadedSite whole = _site.Alone ? _site.Whole() : _unbroken;
        return GuidedRun.Run(whole, GuidedRun.Compile(whole.ProofSystem), _site.Alone ? _site.Scripts(whole) : _scripts, seed, _scans);
    }

    /// <summary>Proves the unbroken site: its verdicts go for every variant in which nothing changes that they depend on.</summary>
    public void ProveUnbroken()
    {
        TransitionSystem system = _unbroken.ProofSystem;
        Parallel.ForEach(system.Requirements, new ParallelOptions { MaxDegreeOfParallelism = Environment.ProcessorCount }, requirement =>
        {
            Kept memory = new(null);
            Assert.IsType<Holds>(Prover.Decide(system, requirement, ProofOptions.Default, memory, null, CancellationToken.None));
            string fingerprint = Prover.Fingerprint(system, requirement);
            lock (_proved)
            {
                _proved.Add(requirement.Name, fingerprint);
                _invariants.Add(requirement.Name, memory.Text ?? throw new InvalidOperationException("nothing kept of a proof"));
            }
        });
    }

    /// <param name="file">The file that is broken.</param>
    /// <param name="variant">How.</param>
    /// <param name="seed">Of the random runs.</param>
    /// <param name="isWhole">Whether the prover is asked about what no run broke too.</param>
    public Judgement Of(string file, Variant variant, int seed, bool isWhole)
    {
        DiagnosticBag diagnostics = new();
        LoadedSite? site = _site.Load(file, variant.Program, diagnostics);
        if (!diagnostics.InOrder().IsEmpty || site is null)
        {
            return new Judgement(Judgement.Refused, string.Join(' ', diagnostics.InOrder().Select(diagnostic => diagnostic.Code).Distinct()), []);
        }

        TransitionSystem system = site.ProofSystem;
        CompiledSystem compiled = GuidedRun.Compile(system);
        GuidedResult result = GuidedRun.Run(site, compiled, _scripts, seed, _scans);
        using CancellationTokenSource patience = new(PatienceForAll);
        List<string> disagreements = [];
        List<string> refuted = [];
        foreach (GuidedBreak one in result.Broken)
        {
            Verdict verdict = Decide(system, one.Requirement, patience.Token);
            Check(system, verdict, one.Requirement, disagreements);
            if (verdict is Fails)
            {
                refuted.Add(one.Requirement.Name);
            }
            else
            {
                long? scan = TracePlayback.FirstScanWhereFalse(GuidedRun.Told(site, compiled, _scripts, seed, one.Scan), system, one.Requirement.Holds);
                string told = string.Create(CultureInfo.InvariantCulture, $"{one.Requirement.Name} in scan {one.Scan} of seed {seed}, which the interpreter breaks in scan {scan + 1} of the way there");
                disagreements.AddRange(verdict is Holds || scan is null ? [$"proved and broken: {told}"] : []);
            }
        }

        if (refuted.Count > 0)
        {
            return new Judgement(Judgement.Broken, Few(refuted), [.. disagreements]);
        }

        if (result.Broken.Length > 0)
        {
            return new Judgement(Judgement.BrokenUndecided, Few(result.Broken.Select(one => one.Requirement.Name)), [.. disagreements]);
        }

        return isWhole ? Searched(system, patience.Token) : new Judgement(Judgement.Undecided, "", []);
    }

    /// <summary>No run broke anything: the prover is asked, until something is refuted.</summary>
    private Judgement Searched(TransitionSystem system, CancellationToken patience)
    {
        List<string> undecided = [];
        bool isSame = true;
        foreach (Requirement requirement in system.Requirements.OrderBy(one => one.Obligation is not null))
        {
            if (IsProvedUnbroken(system, requirement))
            {
                continue;
            }

            isSame = false;
            List<string> disagreements = [];
            switch (Decide(system, requirement, patience))
            {
                case Fails fails:
                    Check(system, fails, requirement, disagreements);
                    return new Judgement(Judgement.Refuted, requirement.Name, [.. disagreements]);
                case Undecided:
                    undecided.Add(requirement.Name);
                    break;
                default:
                    break;
            }
        }

        return isSame ? new Judgement(Judgement.Same, "", [])
            : undecided.Count == 0 ? new Judgement(Judgement.Proved, "", [])
            : new Judgement(Judgement.Undecided, Few(undecided), []);
    }

    /// <summary>Whether its proof for the unbroken site goes for this one too.</summary>
    private bool IsProvedUnbroken(TransitionSystem system, Requirement requirement) =>
        _proved.TryGetValue(requirement.Name, out string? fingerprint) && fingerprint == Prover.Fingerprint(system, requirement);

    private Verdict Decide(TransitionSystem system, Requirement requirement, CancellationToken patience)
    {
        if (IsProvedUnbroken(system, requirement))
        {
            return new Holds(requirement.Name, requirement.Holds, "nothing changed that it depends on", [], new Effort(0, 0, 0, 0, 0, 0, 0));
        }

        using CancellationTokenSource own = CancellationTokenSource.CreateLinkedTokenSource(patience);
        own.CancelAfter(Patience);
        return Prover.Decide(system, requirement, ProofOptions.Default, new Kept(_invariants.GetValueOrDefault(requirement.Name)), null, own.Token);
    }

    /// <summary>A failing run must break the requirement in the interpreter, in its last scan for the first time, and keep all assumptions.</summary>
    private static void Check(TransitionSystem system, Verdict verdict, Requirement requirement, List<string> disagreements)
    {
        if (verdict is not Fails fails)
        {
            return;
        }

        Interpreter interpreter = new(system, [requirement.Holds, .. system.Assumptions.Select(assumption => assumption.Holds)]);
        bool kept = true;
        long? broken = null;
        TracePlayback.Play(fails.Trace, interpreter, (stepper, scan) =>
        {
            kept &= stepper.Observed.AsSpan(1).IndexOf(0L) < 0;
            broken = stepper.Observed[0] == 0 ? scan : null;
            return kept && broken is null;
        });
        disagreements.AddRange(kept && broken == fails.Trace.Scans - 1 ? [] : [$"refuted, and its run does not replay: {requirement.Name}"]);
    }

    /// <summary>The first three names, and how many more.</summary>
    private static string Few(IEnumerable<string> names)
    {
        string[] all = [.. names];
        return all.Length <= 3 ? string.Join(' ', all) : string.Create(CultureInfo.InvariantCulture, $"{string.Join(' ', all[..3])} and {all.Length - 3} more");
    }

    /// <summary>Offers one invariant, which the prover checks before it counts, and keeps the last one found.</summary>
    private sealed class Kept(string? offered) : IProofMemory
    {
        public string? Text { get; private set; }

        public string? Find(string fingerprint) => offered;

        public void Keep(string fingerprint, string text) => Text = text;
    }
}
