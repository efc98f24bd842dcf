using System.Collections.Immutable;
using System.Globalization;
using Sequencer.Language.Programs;
using Sequencer.Plant.Response;

namespace Sequencer.Sites.Tuning;

/// <summary>A dose of a program and how its reading answered while its own step was active.</summary>
/// <param name="Unit">The unit.</param>
/// <param name="Step">The step.</param>
/// <param name="Dose">The dose.</param>
/// <param name="Response">How the reading answered.</param>
/// <param name="Given">All pulses of the stretch, also those before the ones that were looked at.</param>
/// <param name="Movements">By how much the reading had moved the way of the reagent from the begin of each pulse to the begin of the next: what the program compares.</param>
internal sealed record DoseTrend(
    UnitProgram Unit, Step Step, DoseAction Dose, PulseResponse Response, ImmutableArray<Pulse> Given, ImmutableArray<(Pulse Pulse, double Moved)> Movements)
{
    /// <summary>What is known of a dose from a trend; null, with a reason, where it says too little.</summary>
    public static DoseTrend? Of(UnitProgram unit, Step step, DoseAction dose, TrendTable trend, out string why)
    {
        TrendColumn? pump = trend.Find(dose.Output.Tag);
        TrendColumn? reading = trend.Find(dose.Signal.Tag);
        if (pump is null || reading is null)
        {
            string[] lacking = [.. new[] { (dose.Output.Tag, pump), (dose.Signal.Tag, reading) }.Where(column => column.Item2 is null).Select(column => column.Tag)];
            why = $"no column {string.Join(", ", lacking)}";
            return null;
        }

        Pulse[] pulses = [.. trend.Pulses(pump)];
        if (pulses.Length > 0 && trend.FindWords(StepsColumn(unit)) is null && unit.Steps.Count(other => other.Actions.Any(action => Runs(action, dose.Output))) > 1)
        {
            why = $"several steps run {dose.Output.Tag}, and without a column {StepsColumn(unit)} nothing tells their pulses apart: write the number of the active step into it";
            return null;
        }

        (Stretch stretch, ImmutableArray<Pulse> given) = trend.FindWords(StepsColumn(unit)) is { } steps
            ? Fullest(trend.Stretches(steps, words => words.Split('+').Contains(step.Number.ToString(CultureInfo.InvariantCulture))), pulses)
            : (Stretch.Whole, [.. pulses]);
        Pulse[] others =
        [
            .. unit.Steps.SelectMany(other => other.Actions.OfType<DoseAction>())
                .Where(other => other.Signal.Tag == dose.Signal.Tag && other.Output.Tag != dose.Output.Tag)
                .Select(other => trend.Find(other.Output.Tag)).OfType<TrendColumn>().Distinct().SelectMany(trend.Pulses),
        ];
        why = given.IsEmpty ? "no pulse of it while the step was active" : string.Create(
            CultureInfo.InvariantCulture,
            $"{given.Length} {(given.Length == 1 ? "pulse" : "pulses")} in one stay in the step; {PulseFit.FewestPulses} are needed, none of another reagent between them, at most {PulseFit.LongestGap / 60.0:0} min apart, with four readings each");
        return PulseFit.Of(trend.Seconds, reading.Values, given, others, stretch) is { } response
            ? new DoseTrend(unit, step, dose, response, given, Moved(dose, trend, reading, given, others))
            : null;
    }

    /// <summary>The column of a trend that tells which steps of a unit are active.</summary>
    public static string StepsColumn(UnitProgram unit) => $"{unit.Name}.steps";

    /// <summary>The length of the pulses that came last, which were the nearest to the target, s.</summary>
    public double LastPulseSeconds => Response.Pulses[^1].Seconds;

    /// <summary>The most that a second of the last pulses moved the reading.</summary>
    public Estimate SteepestPerSecond(int pulses) => Enumerable.Range(Math.Max(0, Response.Pulses.Length - pulses), Math.Min(pulses, Response.Pulses.Length))
        .Select(index => new Estimate(Math.Abs(Response.Changes[index].Value) / Response.Pulses[index].Seconds, Response.Changes[index].StandardError / Response.Pulses[index].Seconds))
        .MaxBy(rate => rate.Value)!;

    /// <summary>
    /// The least, among all runs of so many pulses, of what the best of them moved: with a larger figure the program would have ended this dose. Where there were
    /// fewer fine pulses than that, they count as a run too: on another day there are more of them. Null where fewer were compared.
    /// </summary>
    public double? LeastOfBest(int pulses)
    {
        if (Movements.Length < pulses)
        {
            return null;
        }

        double least = Enumerable.Range(0, Movements.Length - pulses + 1).Min(first => Movements.Skip(first).Take(pulses).Max(movement => movement.Moved));
        double[] fine = [.. Movements.Where(movement => IsFine(movement.Pulse)).Select(movement => movement.Moved)];
        return fine.Length > 0 && fine.Length < pulses ? Math.Min(least, fine.Max()) : least;
    }

    /// <summary>Nearer to the fine pulse than to the other.</summary>
    private bool IsFine(Pulse pulse) => Dose.FinePulse is { } fine && pulse.Seconds < (fine.Milliseconds + Dose.Pulse.Milliseconds) / 2000.0;

    private static bool Runs(StepAction action, Output output) => action switch
    {
        DoseAction dose => dose.Output.Tag == output.Tag,
        DriveAction drive => drive.On && drive.Output.Tag == output.Tag,
        AmountDoseAction amount => amount.Output.Tag == output.Tag,
        _ => false,
    };

    /// <summary>The stay in the step with the most pulses.</summary>
    private static (Stretch Stretch, ImmutableArray<Pulse> Given) Fullest(IEnumerable<Stretch> stays, Pulse[] pulses)
    {
        (Stretch Stretch, ImmutableArray<Pulse> Given) fullest = (Stretch.Whole, []);
        foreach (Stretch stay in stays)
        {
            ImmutableArray<Pulse> given = [.. pulses.Where(pulse => stay.Holds(pulse.Start))];
            fullest = given.Length > fullest.Given.Length ? (stay, given) : fullest;
        }

        return fullest;
    }

    private static ImmutableArray<(Pulse Pulse, double Moved)> Moved(DoseAction dose, TrendTable trend, TrendColumn reading, ImmutableArray<Pulse> given, Pulse[] others)
    {
        double way = dose.Output.Delivery?.Reagent.Effect == ReagentEffect.Lowers ? -1.0 : 1.0;
        return
        [
            .. given.Zip(given.Skip(1))
                .Where(pair => pair.Second.Start - pair.First.End <= PulseFit.LongestGap && !others.Any(other => other.Start >= pair.First.Start && other.Start < pair.Second.Start))
                .Select(pair => (pair.First, way * (Read(pair.Second.Start) - Read(pair.First.Start)))).Where(movement => double.IsFinite(movement.Item2)),
        ];

        double Read(double seconds)
        {
            int row = Array.BinarySearch(trend.Seconds, seconds);
            for (row = row < 0 ? ~row - 1 : row; row >= 0 && !double.IsFinite(reading.Values[row]);)
            {
                row--;
            }

            return row < 0 ? double.NaN : reading.Values[row];
        }
    }
}
