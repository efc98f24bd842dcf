using System.Numerics;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;

namespace Sequencer.Plant.Integration;

/// <summary>
/// The values within a step of <see cref="DormandPrince"/>, of order 4 (Hairer, Norsett and Wanner, Solving Ordinary Differential Equations I, section II.6):
/// five coefficients of each component, those of as many components as a vector holds one vector after the other.
/// </summary>
internal sealed class ContinuousExtension(int components)
{
    private const int Powers = 5;

    private static readonly int Width = Vector<double>.Count;

    private readonly double[] _coefficients = new double[(components + Width - 1) / Width * Powers * Width];

    /// <summary>First components of the vectors in which something moves: much of a plant rests while some of it works.</summary>
    private readonly int[] _moving = new int[components / Width];
    private int _movingCount;

    /// <param name="step">its length, s</param>
    /// <param name="start">the state where it begins</param>
    /// <param name="end">the state where it ends</param>
    /// <param name="first">the rates where it begins</param>
    /// <param name="last">the rates where it ends</param>
    /// <param name="twist">the stages by the weights of the highest power</param>
    public void Prepare(double step, double[] start, double[] end, double[] first, double[] last, double[] twist)
    {
        _movingCount = 0;
        int index = 0;
        for (; index <= components - Width; index += Width)
        {
            Vector<double> value = new(start, index);
            Vector<double> difference = new Vector<double>(end, index) - value;
            Vector<double> slope = (step * new Vector<double>(first, index)) - difference;
            Vector<double> bend = difference - (step * new Vector<double>(last, index)) - slope;
            Vector<double> highest = step * new Vector<double>(twist, index);
            int place = Place(index);
            value.CopyTo(_coefficients, place);
            difference.CopyTo(_coefficients, place + Width);
            slope.CopyTo(_coefficients, place + (2 * Width));
            bend.CopyTo(_coefficients, place + (3 * Width));
            highest.CopyTo(_coefficients, place + (4 * Width));
            if (Vector.Abs(difference) + Vector.Abs(slope) + Vector.Abs(bend) + Vector.Abs(highest) != Vector<double>.Zero)
            {
                _moving[_movingCount++] = index;
            }
        }

        for (; index < components; index++)
        {
            double difference = end[index] - start[index];
            double slope = (step * first[index]) - difference;
            Span<double> value = _coefficients.AsSpan(Place(index));
            value[0] = start[index];
            value[Width] = difference;
            value[2 * Width] = slope;
            value[3 * Width] = difference - (step * last[index]) - slope;
            value[4 * Width] = step * twist[index];
        }
    }

    /// <summary>All components at a share of the step.</summary>
    public void At(double share, Span<double> state)
    {
        ArgumentOutOfRangeException.ThrowIfNotEqual(state.Length, components, nameof(state));
        for (int index = 0; index <= components - Width; index += Width)
        {
            VectorAt(index, share, state);
        }

        RestAt(share, state);
    }

    /// <summary>As <see cref="At(double, Span{double})"/> over components at another share of this step: those that rest stay as they are.</summary>
    public void Move(double share, Span<double> state)
    {
        ArgumentOutOfRangeException.ThrowIfNotEqual(state.Length, components, nameof(state));
        foreach (int index in _moving.AsSpan(0, _movingCount))
        {
            VectorAt(index, share, state);
        }

        RestAt(share, state);
    }

    public double At(double share, int component)
    {
        double rest = 1.0 - share;
        ReadOnlySpan<double> value = _coefficients.AsSpan(Place(component), ((Powers - 1) * Width) + 1);
        return value[0] + (share * (value[Width] + (rest * (value[2 * Width] + (share * (value[3 * Width] + (rest * value[4 * Width])))))));
    }

    /// <summary>Of a component's first coefficient; the others follow a vector's length apart.</summary>
    private static int Place(int component) => (component / Width * Powers * Width) + (component % Width);

    private static Vector<double> Coefficient(ref double first, int power) => Vector.LoadUnsafe(ref first, (nuint)(power * Width));

    /// <summary>Unchecked, as the callers keep within the state.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private void VectorAt(int index, double share, Span<double> state)
    {
        double rest = 1.0 - share;
        ref double first = ref Unsafe.Add(ref MemoryMarshal.GetArrayDataReference(_coefficients), index * Powers);
        Vector<double> bent = Coefficient(ref first, 3) + (rest * Coefficient(ref first, 4));
        Vector<double> inner = Coefficient(ref first, 2) + (share * bent);
        Vector<double> outer = Coefficient(ref first, 1) + (rest * inner);
        (Coefficient(ref first, 0) + (share * outer)).StoreUnsafe(ref MemoryMarshal.GetReference(state), (nuint)index);
    }

    /// <summary>What is too few for a vector.</summary>
    private void RestAt(double share, Span<double> state)
    {
        for (int index = components - (components % Width); index < components; index++)
        {
            state[index] = At(share, index);
        }
    }
}
