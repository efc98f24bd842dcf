using System.Collections.Immutable;
using Sequencer.Plant.Chemistry;

namespace Sequencer.Plant.Response;

/// <summary>
/// Finds what fits a record of pulses best by least squares: the change of each pulse, which is linear, inside a search for the dead time and the lag. Pulses whose
/// answers overlap are told apart by that. How sure dead time and lag are is found by leaving out what was read behind some of the pulses, one part after another (the
/// jackknife: Quenouille, Biometrika 43 (1956) 353; Tukey, Ann. Math. Stat. 29 (1958) 614).
/// </summary>
public static class PulseFit
{
    /// <summary>Fewer say nothing of how sure the answer is.</summary>
    public const int FewestPulses = 4;

    /// <summary>Pulses so far apart, s, belong to two tests.</summary>
    public const double LongestGap = 1200.0;

    private const int MostPulses = 24;
    private const int MostSamples = 2_000;
    private const int Parts = 8;

    /// <summary>s; what is looked at after the last pulse.</summary>
    private const double Tail = 300.0;

    /// <summary>s; how far and how near dead time and lag are looked for.</summary>
    private const double FirstStep = 4.0;
    private const double FinestStep = 0.05;
    private const double ShortestLag = 0.1;
    private const double LongestSearched = 900.0;

    /// <summary>The longest series of pulses in the record that no other reagent came between; null where none has enough of them or of readings.</summary>
    /// <param name="seconds">The times of the record.</param>
    /// <param name="values">The reading at each.</param>
    /// <param name="pulses">The reagent's, in order.</param>
    /// <param name="others">Those of other reagents that move the reading too.</param>
    public static PulseResponse? Of(double[] seconds, double[] values, IEnumerable<Pulse> pulses, IReadOnlyCollection<Pulse> others)
    {
        Pulse[] series = Longest(pulses, others);
        if (series.Length < FewestPulses)
        {
            return null;
        }

        double from = series[0].Start - 30.0;
        double to = others.Where(other => other.Start >= series[^1].Start).Select(other => other.Start).Append(series[^1].End + Tail).Min();
        int[] rows = [.. Enumerable.Range(0, seconds.Length).Where(row => seconds[row] >= from && seconds[row] <= to && double.IsFinite(values[row]))];
        int every = 1 + (rows.Length / MostSamples);
        (double Time, double Value)[] samples = [.. rows.Where((_, index) => index % every == 0).Select(row => (seconds[row], values[row]))];
        if (samples.Length < 4 * series.Length)
        {
            return null;
        }

        PulseShape best = Search(samples, series, Coarse(samples, series), FirstStep);
        PulseShape[] withoutOne =
        [
            .. Enumerable.Range(0, Parts).Select(part => Search([.. samples.Where(sample => PulseBefore(series, sample.Time) % Parts != part)], series, best, FirstStep / 4.0)),
        ];
        double[] solution = Solve(samples, series, best, out double squares);
        return new PulseResponse(
            best,
            Jackknife([.. withoutOne.Select(shape => shape.DeadTimeSeconds)]),
            Jackknife([.. withoutOne.Select(shape => shape.LagSeconds)]),
            solution[0],
            [.. series],
            [.. solution[1..]],
            Math.Sqrt(squares / samples.Length));
    }

    /// <summary>The place of the last pulse that began before a time; that of the first before it.</summary>
    private static int PulseBefore(Pulse[] pulses, double seconds) => Math.Max(0, pulses.Count(pulse => pulse.Start < seconds) - 1);

    private static Pulse[] Longest(IEnumerable<Pulse> pulses, IReadOnlyCollection<Pulse> others)
    {
        List<Pulse> best = [];
        List<Pulse> series = [];
        foreach (Pulse pulse in pulses)
        {
            if (series.Count > 0 && (pulse.Start - series[^1].End > LongestGap || others.Any(other => other.Start >= series[^1].Start && other.Start < pulse.End)))
            {
                series = [];
            }

            series.Add(pulse);
            best = series.Count > best.Count ? series : best;
        }

        return [.. best.TakeLast(MostPulses)];
    }

    private static PulseShape Coarse((double Time, double Value)[] samples, Pulse[] pulses)
    {
        double[] deadTimes = [0, 2, 4, 7, 11, 16, 23, 32, 45, 60, 80];
        double[] lags = [1, 2, 4, 7, 11, 16, 23, 32, 45, 60, 80, 110];
        return (from dead in deadTimes from lag in lags select new PulseShape(dead, lag)).MinBy(shape => Squares(samples, pulses, shape))!;
    }

    /// <summary>Steps to the best neighbour, with steps halved where there is none.</summary>
    private static PulseShape Search((double Time, double Value)[] samples, Pulse[] pulses, PulseShape from, double firstStep)
    {
        PulseShape best = from;
        double least = Squares(samples, pulses, best);
        for (double step = firstStep; step >= FinestStep;)
        {
            PulseShape[] neighbours =
            [
                Inside(-step, 0.0), Inside(step, 0.0), Inside(0.0, -step), Inside(0.0, step), Inside(-step, step), Inside(step, -step),
            ];
            (PulseShape next, double squares) = neighbours.Select(shape => (shape, Squares(samples, pulses, shape))).MinBy(pair => pair.Item2);
            if (squares < least)
            {
                (best, least) = (next, squares);
            }
            else
            {
                step *= 0.5;
            }
        }

        return best;

        PulseShape Inside(double dead, double lag) => new(
            Math.Clamp(best.DeadTimeSeconds + dead, 0.0, LongestSearched), Math.Clamp(best.LagSeconds + lag, ShortestLag, LongestSearched));
    }

    private static double Squares((double Time, double Value)[] samples, Pulse[] pulses, PulseShape shape)
    {
        Solve(samples, pulses, shape, out double squares);
        return squares;
    }

    /// <summary>What was before and the change of each pulse, by the normal equations.</summary>
    private static double[] Solve((double Time, double Value)[] samples, Pulse[] pulses, PulseShape shape, out double squares)
    {
        int count = pulses.Length + 1;
        double origin = samples[0].Value;
        double[] matrix = new double[count * count];
        double[] right = new double[count];
        double[] row = new double[count];
        row[0] = 1.0;
        foreach ((double time, double value) in samples)
        {
            int begun = 1;
            for (; begun < count && pulses[begun - 1].Start < time; begun++)
            {
                row[begun] = shape.Share(time - pulses[begun - 1].Start, pulses[begun - 1].Seconds);
            }

            for (int one = 0; one < begun; one++)
            {
                right[one] += row[one] * (value - origin);
                for (int other = 0; other <= one; other++)
                {
                    matrix[(one * count) + other] += row[one] * row[other];
                }
            }
        }

        // A pulse that no reading follows moves nothing: a small weight keeps the equations regular.
        for (int one = 0; one < count; one++)
        {
            matrix[(one * count) + one] += 1e-9;
        }

        double[] solution = [.. right];
        DenseSolver.Factor(matrix, count);
        DenseSolver.Substitute(matrix, solution);
        squares = 0.0;
        foreach ((double time, double value) in samples)
        {
            double left = value - origin - solution[0];
            for (int pulse = 0; pulse < pulses.Length && pulses[pulse].Start < time; pulse++)
            {
                left -= solution[pulse + 1] * shape.Share(time - pulses[pulse].Start, pulses[pulse].Seconds);
            }

            squares += left * left;
        }

        solution[0] += origin;
        return solution;
    }

    private static double Jackknife(ImmutableArray<double> estimates)
    {
        double mean = estimates.Average();
        return Math.Sqrt((estimates.Length - 1.0) / estimates.Length * estimates.Sum(estimate => (estimate - mean) * (estimate - mean)));
    }
}
