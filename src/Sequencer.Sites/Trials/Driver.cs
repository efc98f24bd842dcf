using System.Collections.Immutable;
using Sequencer.Simulation.Trials;

namespace Sequencer.Sites.Trials;

/// <summary>A quantity that was drawn and an outcome that rises or falls with it.</summary>
internal sealed record Driver(string Outcome, string Quantity, double Correlation)
{
    /// <summary>For each outcome so many, the strongest first.</summary>
    private const int Most = 5;

    /// <summary>By outcome; what chance could give is left out.</summary>
    public static IEnumerable<Driver> Ranking(TrialSet set)
    {
        int[] drawn = [.. Enumerable.Range(0, set.Runs.Length).Where(run => set.Settings.Faults != TrialFaults.Each || run >= set.Trials.Faults.Length)];
        (string Name, double[] Values)[] quantities = [.. Quantities(set, drawn)];
        foreach (TrialOutcome outcome in TrialOutcome.All(set))
        {
            double[] values = [.. drawn.Select(run => outcome.Values[run])];
            double noticeable = RankCorrelation.Noticeable(values.Count(double.IsFinite));
            IEnumerable<Driver> drivers = quantities
                .Select(quantity => new Driver(outcome.Title, quantity.Name, RankCorrelation.Of(quantity.Values, values)))
                .Where(driver => Math.Abs(driver.Correlation) > noticeable)
                .OrderByDescending(driver => Math.Abs(driver.Correlation))
                .Take(Most);
            foreach (Driver driver in drivers)
            {
                yield return driver;
            }
        }
    }

    private static IEnumerable<(string Name, double[] Values)> Quantities(TrialSet set, int[] drawn)
    {
        ImmutableArray<TrialDraw> draws = [.. drawn.Select(run => set.Plan.Draw(run + 1))];
        for (int index = 0; index < set.Trials.Tolerances.Length; index++)
        {
            int place = index;
            yield return (set.Trials.Tolerances[index].Place.Value, [.. draws.Select(draw => draw.Tolerances[place])]);
        }

        for (int index = 0; index < set.Trials.Description.Operator.Length; index++)
        {
            int place = index;
            yield return ($"delay of {set.Trials.Description.Operator[index].Prompt}", [.. draws.Select(draw => draw.Delays[place])]);
        }

        foreach ((string recipe, _) in set.Trials.Recipes.Length > 1 ? set.Trials.Recipes : [])
        {
            yield return ($"recipe {recipe}", [.. draws.Select(draw => draw.Recipe == recipe ? 1.0 : 0.0)]);
        }
    }
}
