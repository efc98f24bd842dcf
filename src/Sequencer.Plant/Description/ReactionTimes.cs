using Sequencer.Plant.Chemistry;

namespace Sequencer.Plant.Description;

/// <summary>How fast what is dissolved reacts in a plant's waters: time constants in s, each at the pH and strength that the reaction's own text says.</summary>
/// <param name="ChromateReduced">see <see cref="ChromateReduction"/></param>
/// <param name="CyanideOxidised">cyanide to cyanogen chloride, see <see cref="CyanideOxidation"/></param>
/// <param name="CyanogenChlorideHydrolysed">to cyanate</param>
/// <param name="CyanateOxidised">to nitrogen and carbonate</param>
public sealed record ReactionTimes(double ChromateReduced, double CyanideOxidised, double CyanogenChlorideHydrolysed, double CyanateOxidised)
{
    public static ReactionTimes Default { get; } = new(
        ChromateReduction.DefaultReducedInSeconds,
        CyanideOxidation.DefaultCyanideOxidisedInSeconds,
        CyanideOxidation.DefaultHydrolysedInSeconds,
        CyanideOxidation.DefaultCyanateOxidisedInSeconds);
}
