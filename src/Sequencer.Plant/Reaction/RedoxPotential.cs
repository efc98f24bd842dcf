using Sequencer.Plant.Chemistry;

namespace Sequencer.Plant.Reaction;

/// <summary>What a redox probe shows of a water: the potential of chromium(VI) and sulphite or of hypochlorite and cyanide, whichever the water has more of.</summary>
internal static class RedoxPotential
{
    /// <summary>mV against silver/silver chloride.</summary>
    /// <param name="contents">which has one of the two couples at least</param>
    /// <param name="amounts">of each content</param>
    /// <param name="litres">that hold them</param>
    /// <param name="ph">of the water</param>
    public static double Millivolts(ContentLayout contents, ReadOnlySpan<double> amounts, double litres, double ph)
    {
        (double chromate, double sulphite) = (Strength(contents.Chromate, amounts, litres), Strength(contents.Sulphite, amounts, litres));
        (double hypochlorite, double cyanide) = (Strength(contents.Hypochlorite, amounts, litres), Strength(contents.Cyanide, amounts, litres));
        bool isChromium = contents.HasReduction && (!contents.HasChlorination || chromate + sulphite > hypochlorite + cyanide);
        return isChromium ? ChromateReduction.Millivolts(chromate, sulphite, ph) : CyanideOxidation.Millivolts(hypochlorite, cyanide, ph);
    }

    private static double Strength(int content, ReadOnlySpan<double> amounts, double litres) => content >= 0 ? amounts[content] / litres : 0.0;
}
