using System.Runtime.Intrinsics;

namespace Sequencer.Plant.Instruments;

/// <summary>Numbers of many instruments side by side, as many at once as a vector holds, of floats too; the last vector is filled up.</summary>
internal static class Lanes
{
    /// <summary>That many instruments take so many lanes.</summary>
    public static int For(int instruments) => (instruments + Vector256<float>.Count - 1) / Vector256<float>.Count * Vector256<float>.Count;

    /// <summary>One number of each instrument, and one for the lanes that stand for none.</summary>
    public static double[] Of<T>(IReadOnlyList<T> instruments, Func<T, double> number, double none)
    {
        double[] lanes = new double[For(instruments.Count)];
        Array.Fill(lanes, none);
        for (int index = 0; index < instruments.Count; index++)
        {
            lanes[index] = number(instruments[index]);
        }

        return lanes;
    }
}
