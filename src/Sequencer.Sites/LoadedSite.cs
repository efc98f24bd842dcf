using System.Collections.Immutable;
using Sequencer.Control.TransitionSystems;
using Sequencer.Language.Modules;
using Sequencer.Language.Programs;
using Sequencer.Lowering;
using Sequencer.Plant.Description;
using Sequencer.Simulation.Metadata;
using Sequencer.Simulation.Scenarios;
using Sequencer.Sites.Descriptions;
using Sequencer.Sites.Recipes;
using Sequencer.Sites.Trials;
using Sequencer.Text;

namespace Sequencer.Sites;

/// <summary>A site that checks: everything that the stages after the check work with.</summary>
internal sealed record LoadedSite(
    SiteDescription Description,
    SiteProgram Programs,
    TransitionSystem System,
    string MeaningHash,
    PlantModel Plant,
    SourceText PlantText,
    SiteMetadata Metadata,
    ImmutableArray<Recipe> Recipes,
    ImmutableArray<Scenario> Scenarios,
    ImmutableArray<SourceText> Texts,
    LibraryReader Libraries)
{
    private readonly Lazy<TransitionSystem> _proofSystem = new(() => SiteLowering.LowerWithObligations(Programs));

    /// <summary>What the site says of its trials; null where it says nothing.</summary>
    public SiteTrials? Trials { get; init; }

    /// <summary>The beginning of the paths of its files, with the last stroke: what people need not read.</summary>
    public string Root
    {
        get
        {
            string description = Description.Plant.Span.Source.Path;
            return description[..(description.LastIndexOf('/') + 1)];
        }
    }

    /// <summary>As <see cref="System"/>, with the standard obligations and what watches them.</summary>
    public TransitionSystem ProofSystem => _proofSystem.Value;
}
