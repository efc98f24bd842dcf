namespace Sequencer.Plant.Integration;

/// <summary>The coefficients of the method of Dormand and Prince (1980), order 5(4), seven stages.</summary>
internal static class DormandPrinceTableau
{
    private static readonly double[][] Stages =
    [
        [],
        [1.0 / 5.0],
        [3.0 / 40.0, 9.0 / 40.0],
        [44.0 / 45.0, -56.0 / 15.0, 32.0 / 9.0],
        [19372.0 / 6561.0, -25360.0 / 2187.0, 64448.0 / 6561.0, -212.0 / 729.0],
        [9017.0 / 3168.0, -355.0 / 33.0, 46732.0 / 5247.0, 49.0 / 176.0, -5103.0 / 18656.0],
        [35.0 / 384.0, 0.0, 500.0 / 1113.0, 125.0 / 192.0, -2187.0 / 6784.0, 11.0 / 84.0],
    ];

    public static ReadOnlySpan<double> Nodes => [0.0, 1.0 / 5.0, 3.0 / 10.0, 4.0 / 5.0, 8.0 / 9.0, 1.0, 1.0];

    /// <summary>Weights of order 5 less those of order 4.</summary>
    public static ReadOnlySpan<double> ErrorWeights =>
        [71.0 / 57600.0, 0.0, -71.0 / 16695.0, 71.0 / 1920.0, -17253.0 / 339200.0, 22.0 / 525.0, -1.0 / 40.0];

    /// <summary>The last term of the continuous extension of order 4.</summary>
    public static ReadOnlySpan<double> DenseWeights =>
    [
        -12715105075.0 / 11282082432.0, 0.0, 87487479700.0 / 32700410799.0, -10690763975.0 / 1880347072.0,
        701980252875.0 / 199316789632.0, -1453857185.0 / 822651844.0, 69997945.0 / 29380423.0,
    ];

    /// <summary>The weights of the stages before <paramref name="stage"/>, which counts from 1 to 6.</summary>
    public static ReadOnlySpan<double> Stage(int stage) => Stages[stage];
}
