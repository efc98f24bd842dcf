using Sequencer.Plant.Integration;

namespace Sequencer.Plant.Tests.Integration;

/// <summary>
/// The stiff problems that Hairer and Wanner, Solving Ordinary Differential Equations II, section IV.1 and IV.10, and the test set of Bari and CWI
/// have (constants from memory; <c>stiff.c</c> has the same, and the two are held against each other).
/// </summary>
internal static class StiffProblem
{
    public static (Rates Rates, double[] Start) Of(string name) => name switch
    {
        "robertson" => (Robertson, [1.0, 0.0, 0.0]),
        "van-der-pol" => (VanDerPol, [2.0, -0.66]),
        "oregonator" => (Oregonator, [1.0, 2.0, 3.0]),
        "hires" => (Hires, [1.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0057]),
        _ => throw new ArgumentException($"no problem {name}", nameof(name)),
    };

    private static void Robertson(double time, ReadOnlySpan<double> y, Span<double> f)
    {
        f[0] = (-0.04 * y[0]) + (1e4 * y[1] * y[2]);
        f[2] = 3e7 * y[1] * y[1];
        f[1] = -f[0] - f[2];
    }

    private static void VanDerPol(double time, ReadOnlySpan<double> y, Span<double> f)
    {
        f[0] = y[1];
        f[1] = (((1.0 - (y[0] * y[0])) * y[1]) - y[0]) / 1e-6;
    }

    private static void Oregonator(double time, ReadOnlySpan<double> y, Span<double> f)
    {
        f[0] = 77.27 * (y[1] + (y[0] * (1.0 - (8.375e-6 * y[0]) - y[1])));
        f[1] = (y[2] - ((1.0 + y[0]) * y[1])) / 77.27;
        f[2] = 0.161 * (y[0] - y[2]);
    }

    private static void Hires(double time, ReadOnlySpan<double> y, Span<double> f)
    {
        f[0] = (-1.71 * y[0]) + (0.43 * y[1]) + (8.32 * y[2]) + 0.0007;
        f[1] = (1.71 * y[0]) - (8.75 * y[1]);
        f[2] = (-10.03 * y[2]) + (0.43 * y[3]) + (0.035 * y[4]);
        f[3] = (8.32 * y[1]) + (1.71 * y[2]) - (1.12 * y[3]);
        f[4] = (-1.745 * y[4]) + (0.43 * (y[5] + y[6]));
        f[5] = (-280.0 * y[5] * y[7]) + (0.69 * y[3]) + (1.71 * y[4]) - (0.43 * y[5]) + (0.69 * y[6]);
        f[6] = (280.0 * y[5] * y[7]) - (1.81 * y[6]);
        f[7] = -f[6];
    }
}
