using CsCheck;

namespace Sequencer.Testing;

/// <summary>
/// Property tests that see the same cases in every run: the library's own sampling takes its seed for the
/// first case only. A case that fails is handed to it to be shrunk.
/// </summary>
public static class Repeatable
{
    private const int ShrinkingTries = 200;

    public static void SampleRepeatably<T>(this Gen<T> cases, Action<T> check, int iterations)
    {
        for (int iteration = 0; iteration < iterations; iteration++)
        {
            PCG random = new(1, (ulong)iteration);
            ulong state = random.State;
            T sample = cases.Generate(random, null, out _);
            try
            {
                check(sample);
            }
            catch (Exception failure)
            {
                cases.Sample(check, seed: random.ToString(state), iter: ShrinkingTries, threads: 1);
                throw new InvalidOperationException($"case {iteration} failed once and not again: {failure.Message}", failure);
            }
        }
    }

    public static void SampleRepeatably<T>(this Gen<T> cases, Func<T, bool> check, int iterations) =>
        cases.SampleRepeatably(
            sample =>
            {
                if (!check(sample))
                {
                    throw new InvalidOperationException("the property does not hold");
                }
            },
            iterations);

    public static void SampleRepeatably<TFirst, TSecond>(this Gen<(TFirst, TSecond)> cases, Action<TFirst, TSecond> check, int iterations) =>
        cases.SampleRepeatably(sample => check(sample.Item1, sample.Item2), iterations);

    public static void SampleRepeatably<TFirst, TSecond, TThird>(
        this Gen<(TFirst, TSecond, TThird)> cases, Action<TFirst, TSecond, TThird> check, int iterations) =>
        cases.SampleRepeatably(sample => check(sample.Item1, sample.Item2, sample.Item3), iterations);

    public static void SampleRepeatably<TFirst, TSecond>(this Gen<(TFirst, TSecond)> cases, Func<TFirst, TSecond, bool> check, int iterations) =>
        cases.SampleRepeatably(sample => check(sample.Item1, sample.Item2), iterations);

    public static void SampleRepeatably<TFirst, TSecond, TThird>(
        this Gen<(TFirst, TSecond, TThird)> cases, Func<TFirst, TSecond, TThird, bool> check, int iterations) =>
        cases.SampleRepeatably(sample => check(sample.Item1, sample.Item2, sample.Item3), iterations);
}
