using System.Collections.Immutable;
using Sequencer.Control.TransitionSystems;
using Sequencer.Proof;
using Sequencer.Simulation.Running;
using Sequencer.Sites.Stages;
using Sequencer.Text;

namespace Sequencer.Sites.Tests.Variants;

/// <summary>
/// Gives broken programs of a site to the checker, the prover and the simulator, in this order, as <c>verify</c> does, until
/// one of them notices. What a requirement depends on is often not what was broken: then its proof still holds.
/// </summary>
internal sealed class VariantTrial
{
    /// <summary>
    /// Many times what an unbroken site takes. A failure that shows only at the end of a whole batch can take the prover hours:
    /// such a variant counts as unproved, if no scenario shows it.
    /// </summary>
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(45);

    private readonly VariantSite _site;
    private readonly ImmutableDictionary<string, string> _proved;

    /// <summary>Proves the unbroken program first.</summary>
    public VariantTrial(VariantSite site)
    {
        _site = site;
        using BrokenSite unbroken = new(site.Folder, site.ProgramFile, site.Program, alone: true);
        DiagnosticBag diagnostics = new();
        LoadedSite? loaded = SiteLoader.Load(unbroken.Folder, diagnostics);
        Assert.True(loaded is not null && diagnostics.InOrder().IsEmpty, $"{site.Folder} itself does not check");
        Assert.All(
            Prover.DecideAll(loaded.System, ProofOptions.Default, Environment.ProcessorCount, null, CancellationToken.None),
            verdict => Assert.IsType<Holds>(verdict));
        _proved = loaded.System.Requirements.ToImmutableDictionary(requirement => requirement.Name, requirement => Prover.Fingerprint(loaded.System, requirement));
    }

    public Finding Of(Variant variant)
    {
        using BrokenSite broken = new(_site.Folder, _site.ProgramFile, variant.Program, alone: true);
        DiagnosticBag diagnostics = new();
        LoadedSite? site = SiteLoader.Load(broken.Folder, diagnostics);
        if (!diagnostics.InOrder().IsEmpty || site is null)
        {
            return new Finding(Finding.Checker, string.Join(' ', diagnostics.InOrder().Select(diagnostic => diagnostic.Code).Distinct()));
        }

        using CancellationTokenSource patience = new(Patience);
        List<string> undecided = [];
        foreach (Requirement requirement in site.System.Requirements.Where(requirement => _proved[requirement.Name] != Prover.Fingerprint(site.System, requirement)))
        {
            switch (Prover.Decide(site.System, requirement, ProofOptions.Default, null, patience.Token))
            {
                case Fails:
                    return new Finding(Finding.Prover, requirement.Name);
                case Undecided:
                    undecided.Add(requirement.Name);
                    break;
                default:
                    break;
            }
        }

        return Simulated(site, diagnostics) is { } scenario ? new Finding(Finding.Simulator, scenario)
            : undecided.Count > 0 ? new Finding(Finding.Unproved, undecided[0])
            : new Finding(Finding.Nobody, "");
    }

    /// <summary>The first scenario that does not come out as expected.</summary>
    private static string? Simulated(LoadedSite site, DiagnosticBag diagnostics) => SiteCommands.InOrder(site).FirstOrDefault(scenario =>
    {
        ScenarioResult? result = SimulationStage.Play(site, scenario, diagnostics, new Silent(), CancellationToken.None);
        return result is not { Passed: true } || SimulationStage.Outside(site, result).Any();
    })?.Name;

    private sealed class Silent : IProgress<StageProgress>
    {
        public void Report(StageProgress value)
        {
        }
    }
}
