using System.Collections.Immutable;
using Sequencer.Plant.Description;

namespace Sequencer.Plant.Reaction;

/// <summary>Dry grams for each unit of a content where it is solid; 0 for what is never held.</summary>
internal static class SolidWeights
{
    /// <summary>Ca(OH)2, g/mol.</summary>
    private const double LimeGramsPerMole = 74.09;

    public static double[] Of(ContentLayout contents, ImmutableArray<(Substance Substance, double GramsPerMole)> retained)
    {
        double[] grams = new double[contents.Count];
        grams[contents.Lime] = LimeGramsPerMole;
        grams[contents.Suspended] = 1.0;
        if (contents.FilterAid >= 0)
        {
            grams[contents.FilterAid] = 1.0;
        }

        foreach ((Substance substance, double gramsPerMole) in retained)
        {
            int place = contents.Dissolved.IndexOf(substance);
            if (place >= 0)
            {
                grams[place] = gramsPerMole;
            }
        }

        return grams;
    }
}
