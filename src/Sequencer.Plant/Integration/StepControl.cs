namespace Sequencer.Plant.Integration;

/// <summary>How long the next step is by the error of the last, over the error allowed (Hairer, Norsett and Wanner I, section II.4).</summary>
internal static class StepControl
{
    /// <summary>Steps below this, in seconds, are given up: no piece of a plant acts faster.</summary>
    public const double SmallestStep = 1e-9;

    /// <summary>How often a step is tried.</summary>
    public const int MostAttempts = 60;

    private const double Safety = 0.9;
    private const double MostShrinking = 0.2;
    private const double MostGrowing = 5.0;

    /// <summary>A step that would leave a sliver before the limit takes the sliver along.</summary>
    public static bool Reaches(double start, double step, double limit) => start + (step * 1.01) >= limit;

    /// <summary>By how much a step may grow, or must shrink, after one with such an error, whose size goes with the step to the power of the order.</summary>
    public static double Factor(double error, double order) =>
        double.IsNaN(error) ? MostShrinking : Math.Clamp(Safety * Math.Pow(error, -1.0 / order), MostShrinking, MostGrowing);

    /// <summary>The component whose error is furthest beyond what is allowed, or the first that is no number.</summary>
    public static int Furthest(ReadOnlySpan<double> errors, double[] absolute, double relative, double[] start, double[] end)
    {
        (int furthest, double most) = (0, -1.0);
        for (int index = 0; index < errors.Length; index++)
        {
            double ratio = Math.Abs(errors[index]) / (absolute[index] + (relative * Math.Max(Math.Abs(start[index]), Math.Abs(end[index]))));
            if (double.IsNaN(ratio))
            {
                return index;
            }

            (furthest, most) = ratio > most ? (index, ratio) : (furthest, most);
        }

        return furthest;
    }

    /// <summary>What to try after a step with too large an error.</summary>
    public static double Shorter(double taken, double factor) => taken * Math.Min(factor, Safety);
}
