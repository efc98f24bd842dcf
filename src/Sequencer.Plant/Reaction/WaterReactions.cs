using System.Collections.Immutable;
using Sequencer.Plant.Chemistry;
using Sequencer.Plant.Description;

namespace Sequencer.Plant.Reaction;

/// <summary>The reactions that the substances of a plant can have with each other. The acid and alkali that they take follow from the balance of charge.</summary>
internal static class WaterReactions
{
    /// <summary>mol/L of hypochlorite at which the time constant below holds.</summary>
    private const double UsualHypochlorite = 1e-3;

    /// <summary>s, of sulphite in 1 mmol/L of hypochlorite: at once, for a plant (our own choice).</summary>
    private const double DechlorinatedInSeconds = 2.0;

    public static ImmutableArray<WaterReaction> Of(ContentLayout contents, ReactionTimes times)
    {
        ImmutableArray<WaterReaction>.Builder all = ImmutableArray.CreateBuilder<WaterReaction>();
        if (contents.HasReduction)
        {
            all.Add(new WaterReaction(
                contents.Chromate,
                contents.Sulphite,
                true,
                [
                    (contents.Chromate, -1.0),
                    (contents.Chromium, 1.0),
                    (contents.Sulphite, -ChromateReduction.SulphitePerChromate),
                    (contents.Sulphate, ChromateReduction.SulphitePerChromate),
                ],
                (chromate, sulphite, ph) => ChromateReduction.Rate(chromate, sulphite, ph, times.ChromateReduced)));
        }

        if (contents.HasChlorination)
        {
            all.Add(new WaterReaction(
                contents.Cyanide,
                contents.Hypochlorite,
                false,
                [(contents.Cyanide, -1.0), (contents.Hypochlorite, -1.0), (contents.CyanogenChloride, 1.0)],
                (cyanide, hypochlorite, _) => CyanideOxidation.ChlorinationRate(cyanide, hypochlorite, times.CyanideOxidised)));
        }

        if (contents.CyanogenChloride >= 0)
        {
            all.Add(new WaterReaction(
                contents.CyanogenChloride,
                -1,
                true,
                [(contents.CyanogenChloride, -1.0), (contents.Cyanate, 1.0), (contents.Chloride, 1.0)],
                (cyanogenChloride, _, ph) => CyanideOxidation.HydrolysisRate(cyanogenChloride, ph, times.CyanogenChlorideHydrolysed)));
        }

        if (contents.HasCyanateOxidation)
        {
            all.Add(new WaterReaction(
                contents.Cyanate,
                contents.Hypochlorite,
                true,
                [
                    (contents.Cyanate, -1.0),
                    (contents.Hypochlorite, -CyanideOxidation.HypochloritePerCyanate),
                    (contents.Carbonate, 1.0),
                    (contents.Chloride, CyanideOxidation.HypochloritePerCyanate),
                ],
                (cyanate, hypochlorite, ph) => CyanideOxidation.CyanateRate(cyanate, hypochlorite, ph, times.CyanateOxidised)));
        }

        if (contents.HasDechlorination)
        {
            // OCl- + SO3-2 = Cl- + SO4-2.
            all.Add(new WaterReaction(
                contents.Sulphite,
                contents.Hypochlorite,
                false,
                [(contents.Sulphite, -1.0), (contents.Hypochlorite, -1.0), (contents.Sulphate, 1.0), (contents.Chloride, 1.0)],
                (sulphite, hypochlorite, _) => sulphite * (hypochlorite / UsualHypochlorite) / DechlorinatedInSeconds));
        }

        return all.ToImmutable();
    }
}
