namespace Sequencer.Plant.Integration;

/// <summary>
/// The coefficients of the singly diagonally implicit method of order 4(3) with five stages, L-stable and stiffly accurate, of Hairer
/// and Wanner, Solving Ordinary Differential Equations II, section IV.6 (from memory; that they meet the conditions of their orders is
/// tested). The continuous extension of order 3 is ours: the only one of degree 4 whose weights meet these conditions at every time
/// and those of <c>c^3</c> too.
/// </summary>
internal static class DiagonallyImplicitTableau
{
    public const int Stages = 5;
    public const double Diagonal = 1.0 / 4.0;

    private static readonly double[][] Below =
    [
        [],
        [1.0 / 2.0],
        [17.0 / 50.0, -1.0 / 25.0],
        [371.0 / 1360.0, -137.0 / 2720.0, 15.0 / 544.0],
        [25.0 / 24.0, -49.0 / 48.0, 125.0 / 16.0, -85.0 / 12.0],
    ];

    private static readonly double[][] Dense =
    [
        [11.0 / 3.0, -463.0 / 72.0, 217.0 / 36.0, -20.0 / 9.0],
        [11.0 / 2.0, -385.0 / 16.0, 661.0 / 24.0, -10.0],
        [-125.0 / 18.0, 20125.0 / 432.0, -8875.0 / 216.0, 250.0 / 27.0],
        [0.0, -85.0 / 4.0, 85.0 / 6.0, 0.0],
        [-11.0 / 9.0, 557.0 / 108.0, -359.0 / 54.0, 80.0 / 27.0],
    ];

    public static ReadOnlySpan<double> Nodes => [1.0 / 4.0, 3.0 / 4.0, 11.0 / 20.0, 1.0 / 2.0, 1.0];

    /// <summary>Weights of order 4 less those of order 3.</summary>
    public static ReadOnlySpan<double> ErrorWeights => [-3.0 / 16.0, -27.0 / 32.0, 25.0 / 32.0, 0.0, 1.0 / 4.0];

    /// <summary>The weights of the stages before <paramref name="stage"/>, which counts from 0; those of the last are the method's own.</summary>
    public static ReadOnlySpan<double> Stage(int stage) => Below[stage];

    /// <summary>The weight of a stage within a step: its factors of the first to fourth power of the share of the step.</summary>
    public static ReadOnlySpan<double> DenseWeights(int stage) => Dense[stage];
}
