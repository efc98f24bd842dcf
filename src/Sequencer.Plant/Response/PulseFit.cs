using System.Collections.Immutable;
using Sequencer.Plant.Chemistry;

namespace Sequencer.Plant.Response;

/// <summary>
/// Finds what fits a record of pulses best by least squares: the change of each pulse, which is linear, inside a search for the dead time and the lag. Pulses whose
/// answers overlap are told apart by that. How sure dead time and lag are is found by leaving out what was read behind some of the pulses, one part after another (the
/// jackknife: Quenouille, Biometrika 43 (1956) 353; Tukey, Ann. Math. Stat. 29 (1958) 614). The error of a change is put together from two that do not depend on each
/// other: what the change becomes with the dead times and lags of the parts, and what noise does to it with the shape given.
/// </summary>
public static class PulseFit
{
    /// <summary>Fewer say nothing of how sure the answer is.</summary>
    public const int FewestPulses = 4;

    /// <summary>Pulses so far apart, s, belong to two tests.</summary>
    public const double LongestGap = 1200.0;

    private const int MostPulses = 24;
    private const int MostSamples = 2_000;
    private const int MostParts = 8;

    /// <summary>Residuals that follow each other more closely than so say no more than these do.</summary>
    private const double MostAlike = 0.9;

    /// <summary>s; what is looked at after the last pulse.</summary>
    private const double Tail = 300.0;

    /// <summary>s; what is looked at before the first.</summary>
    private const double Lead = 30.0;

    /// <summary>s; how far and how near dead time and lag are looked for.</summary>
    private const double FirstStep = 4.0;
    private const double FinestStep = 0.05;

    /// <summary>s; what is found there, at the end of what is searched, was not found.</summary>
    public const double LongestSearched = 900.0;

    /// <summary>s; likewise.</summary>
    public const double ShortestLag = 0.1;

    /// <summary>The longest series of pulses in a stretch of the record that no other reagent came between; null where none has enough of them or of readings.</summary>
    /// <param name="seconds">The times of the record.</param>
    /// <param name="values">The reading at each.</param>
    /// <param name="pulses">The reagent's that began in the stretch, in order.</param>
    /// <param name="others">Those of other reagents that move the reading too.</param>
    /// <param name="stretch">What is looked at: nothing before or after it is.</param>
    public static PulseResponse? Of(double[] seconds, double[] values, IEnumerable<Pulse> pulses, IReadOnlyCollection<Pulse> others, Stretch stretch)
    {
        Pulse[] series = Longest(pulses, others);
        if (series.Length < FewestPulses)
        {
            return null;
        }

        Stretch seen = new(
            Math.Max(stretch.From, series[0].Start - Lead),
            others.Where(other => other.Start >= series[^1].Start).Select(other => other.Start).Append(series[^1].End + Tail).Append(stretch.To).Min());
        int[] rows = [.. Enumerable.Range(0, seconds.Length).Where(row => seen.Holds(seconds[row]) && double.IsFinite(values[row]))];
        int every = 1 + (rows.Length / MostSamples);
        (double Time, double Value)[] samples = [.. rows.Where((_, index) => index % every == 0).Select(row => (seconds[row], values[row]))];
        if (samples.Length < 4 * series.Length)
        {
            return null;
        }

        PulseShape best = Search(samples, series, Coarse(samples, series), FirstStep);
        int parts = Math.Min(MostParts, series.Length);
        PulseShape[] withoutOne =
        [
            .. Enumerable.Range(0, parts).Select(part => Search([.. samples.Where(sample => PulseBefore(series, sample.Time) % parts != part)], series, best, FirstStep / 4.0)),
        ];
        double[] solution = Solve(samples, series, best, out double[] factor, out double[] left);
        double[][] ofParts = [.. withoutOne.Select(shape => Solve(samples, series, shape, out _, out _))];
        double noise = Math.Sqrt(left.Sum(rest => rest * rest) / left.Length);
        double perRow = noise * Math.Sqrt(Alike(left));
        return new PulseResponse(
            best,
            [.. withoutOne],
            solution[0],
            [.. series],
            [.. Enumerable.Range(1, series.Length).Select(place => new Estimate(
                solution[place], double.Hypot(Jackknife([.. ofParts.Select(part => part[place])]), perRow * Math.Sqrt(Inverse(factor, solution.Length, place)))))],
            noise,
            seen);
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
        Solve(samples, pulses, shape, out _, out double[] left);
        double squares = 0.0;
        foreach (double rest in left)
        {
            squares += rest * rest;
        }

        return squares;
    }

    /// <summary>What was before and the change of each pulse, by the normal equations.</summary>
    /// <param name="samples">The record.</param>
    /// <param name="pulses">The pulses.</param>
    /// <param name="shape">Dead time and lag.</param>
    /// <param name="factor">The Cholesky factor of the normal equations.</param>
    /// <param name="left">What is left of each sample.</param>
    private static double[] Solve((double Time, double Value)[] samples, Pulse[] pulses, PulseShape shape, out double[] factor, out double[] left)
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
        factor = matrix;
        left = new double[samples.Length];
        for (int sample = 0; sample < samples.Length; sample++)
        {
            (double time, double value) = samples[sample];
            double rest = value - origin - solution[0];
            for (int pulse = 0; pulse < pulses.Length && pulses[pulse].Start < time; pulse++)
            {
                rest -= solution[pulse + 1] * shape.Share(time - pulses[pulse].Start, pulses[pulse].Seconds);
            }

            left[sample] = rest;
        }

        solution[0] += origin;
        return solution;
    }

    /// <summary>The entry on the diagonal of the inverse of a factored matrix.</summary>
    private static double Inverse(double[] factor, int count, int place)
    {
        double[] unit = new double[count];
        unit[place] = 1.0;
        DenseSolver.Substitute(factor, unit);
        return unit[place];
    }

    /// <summary>By how many times residuals of which each is like the one before count for fewer: (1 + r) / (1 - r), r their correlation (a first-order process; from memory).</summary>
    private static double Alike(double[] left)
    {
        double squares = left.Sum(rest => rest * rest);
        double products = left.Skip(1).Zip(left, (next, rest) => next * rest).Sum();
        double alike = squares > 0.0 ? Math.Clamp(products / squares, 0.0, MostAlike) : 0.0;
        return (1.0 + alike) / (1.0 - alike);
    }

    internal static double Jackknife(ImmutableArray<double> estimates)
    {
        double mean = estimates.Average();
        return Math.Sqrt((estimates.Length - 1.0) / estimates.Length * estimates.Sum(estimate => (estimate - mean) * (estimate - mean)));
    }
}
