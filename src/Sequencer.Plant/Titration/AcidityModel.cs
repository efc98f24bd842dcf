using System.Collections.Immutable;
using Sequencer.Plant.Chemistry;

namespace Sequencer.Plant.Titration;

/// <summary>
/// What a water takes of a base, made of things that can take it: strong acid, weak acids of any pK, hydroxides that fall out from some pH on, each in an amount
/// that fits a titration best and is not negative (but for the strong acid, which may be a base); and the protons and hydroxide ions that pH itself
/// tells, with the activity coefficient that fits best of those that waters have. It says what the water needs, not what is in it: another mixture may fit as well.
/// </summary>
public sealed class AcidityModel
{
    private const double LowestPk = 1.5;
    private const double HighestPk = 12.5;
    private const double StepOfPk = 0.5;
    private const double LowestOnset = 2.0;
    private const double HighestOnset = 11.0;
    private const double StepOfOnset = 0.25;

    private static readonly ImmutableArray<Func<double, double>> Takers =
    [
        .. Steps(LowestPk, HighestPk, StepOfPk).Select(Weak),
        .. Steps(LowestOnset, HighestOnset, StepOfOnset).SelectMany(onset => new[] { Precipitate(onset, 2), Precipitate(onset, 3) }),
    ];

    private readonly double[] _amounts;
    private readonly WaterIons _ions;

    private AcidityModel(double[] amounts, WaterIons ions, double standardError)
    {
        _amounts = amounts;
        _ions = ions;
        StandardError = standardError;
    }

    /// <summary>How far a point of the titration is from the model, eq/L, as a root of the mean square.</summary>
    public double StandardError { get; }

    public static AcidityModel Fitted(TitrationTable table) => WaterIons.In(table).Select(ions => Fitted(table, ions)).MinBy(model => model.StandardError)!;

    private static AcidityModel Fitted(TitrationTable table, WaterIons ions)
    {
        double[][] rows = [.. table.Points.Select(point => Terms(point.Ph))];
        double[] right = [.. table.Points.Select(point => table.BaseAdded(point.Litres) - (ions.Base(point.Ph) * table.Dilution(point.Litres)))];
        double[][] columns = [.. Enumerable.Range(0, rows[0].Length).Select(column => Array.ConvertAll(rows, row => row[column]))];
        double[] amounts = NonNegativeLeastSquares.Solve(columns, right);
        double squares = rows.Zip(right, (row, wanted) => Math.Pow(DenseSolver.Dot(row, amounts) - wanted, 2)).Average();
        return new AcidityModel(amounts, ions, Math.Sqrt(squares));
    }

    /// <summary>Equivalents of base that bring a litre of the water to a pH, when it is diluted to so many times its volume by then.</summary>
    public double BaseNeeded(double ph, double dilution) => DenseSolver.Dot(Terms(ph), _amounts) + (_ions.Base(ph) * dilution);

    /// <summary>
    /// Litres of a reagent, of so many equivalents of base in a litre (negative of an acid), for each litre of water. Its own water dilutes; so much less is needed
    /// or more, in a few rounds.
    /// </summary>
    public double Dose(double ph, double strength)
    {
        double dose = 0;
        for (int round = 0; round < 50; round++)
        {
            dose = BaseNeeded(ph, 1.0 + Math.Max(0.0, dose)) / strength;
        }

        return dose;
    }

    private static double[] Terms(double ph) => [1.0, -1.0, .. Takers.Select(taker => taker(ph))];

    /// <summary>The part of a weak acid that has given its proton.</summary>
    private static Func<double, double> Weak(double pk) => ph => 1.0 / (1.0 + Math.Pow(10, pk - ph));

    /// <summary>The part of a metal ion of this charge that has fallen out as hydroxide: what stays falls by so many powers of ten for each pH.</summary>
    private static Func<double, double> Precipitate(double onset, int charge) => ph => Math.Max(0.0, 1.0 - Math.Pow(10, charge * (onset - ph)));

    private static IEnumerable<double> Steps(double from, double to, double step)
    {
        int count = (int)Math.Round((to - from) / step);
        return Enumerable.Range(0, count + 1).Select(number => from + (number * step));
    }
}
