namespace Sequencer.Simulation.Words;

/// <summary>Weights as a person reads them.</summary>
internal static class WeightWords
{
    private const int Figures = 3;
    private const double GramsPerKilogram = 1000.0;

    /// <summary>kg; less is nothing: a milligram in a batch.</summary>
    private const double Least = 1e-6;

    /// <summary>It is worth telling.</summary>
    public static bool IsSome(double kilograms) => Math.Abs(kilograms) >= Least;

    /// <summary>Three figures, as <c>47.2 kg</c> or <c>13.6 g</c>.</summary>
    public static string Of(double kilograms) => !IsSome(kilograms)
        ? "0 kg"
        : Math.Abs(kilograms) < 1.0 ? ValueWords.Significant(kilograms * GramsPerKilogram, Figures, "g") : ValueWords.Significant(kilograms, Figures, "kg");

    /// <summary>A dash where there is none.</summary>
    public static string OrDash(double? kilograms) => kilograms is { } value ? Of(value) : "-";
}
