using System.Collections.Immutable;
using System.Globalization;
using Sequencer.Plant.Description;
using Sequencer.Simulation.Scenarios;
using Sequencer.Simulation.Trials;

namespace Sequencer.Sites.Trials;

/// <summary>
/// What each run of a set has. Run k depends on the seed, the number of runs and k, on nothing else. Tolerances, delays and
/// recipes are drawn as a Latin hypercube: the range of each is cut into as many parts as there are runs, each part is used once,
/// and which parts come together is drawn (M. D. McKay, R. J. Beckman and W. J. Conover, Technometrics 21 (1979) 239).
/// </summary>
internal sealed class TrialPlan
{
    private const int UsualRuns = 100;
    private const int UsualPairs = 500;
    private const int MostSeed = 1_000_000_000;
    private const ulong ScenarioStream = 1;
    private const ulong RecipeStream = 2;
    private const ulong SeedStream = 3;
    private const ulong MomentStream = 4;
    private const ulong PairStream = 8;
    private const ulong ToleranceStreams = 100;
    private const ulong OperatorStreams = 100_000;

    private readonly SiteTrials _trials;
    private readonly TrialSettings _settings;
    private readonly ImmutableArray<FaultWindows> _windows;
    private readonly int _drawn;
    private readonly Dictionary<ulong, int[]> _orders = [];

    /// <param name="trials">what the site says</param>
    /// <param name="settings">what was asked for</param>
    /// <param name="windows">of each scenario</param>
    public TrialPlan(SiteTrials trials, TrialSettings settings, ImmutableArray<FaultWindows> windows)
    {
        _trials = trials;
        _settings = settings;
        _windows = windows;
        Runs = RunsOf(trials, settings);
        _drawn = settings.Faults == TrialFaults.Each ? Math.Max(1, Runs - trials.Faults.Length) : Runs;
        foreach (ulong stream in Streams())
        {
            _orders[stream] = SeededDraws.Order(settings.Seed, stream, _drawn);
        }

        if (settings.Faults == TrialFaults.Pairs)
        {
            _orders[PairStream] = SeededDraws.Order(settings.Seed, PairStream, Pairs(trials));
        }
    }

    public int Runs { get; }

    public static int RunsOf(SiteTrials trials, TrialSettings settings) => settings.Faults switch
    {
        TrialFaults.Each => trials.Faults.Length * (settings.Runs ?? 1),
        TrialFaults.Pairs => Math.Min(settings.Runs ?? UsualPairs, Pairs(trials)),
        _ => settings.Runs ?? UsualRuns,
    };

    public static int Pairs(SiteTrials trials) => trials.Faults.Length * (trials.Faults.Length - 1) / 2;

    /// <summary>The scenario without faults and as described, its operator answering as meant after the middle of his times.</summary>
    public static Scenario AsDescribed(SiteTrials trials, int scenario) => TrialFit.WithOperator(
        trials.Scenarios[scenario],
        [.. trials.Description.Operator.Select(spread => Rule(spread, OperatorManner.AsMeant, (spread.SoonestSeconds + spread.LatestSeconds) / 2))]);

    public TrialDraw Draw(int run)
    {
        int number = run - 1;
        bool asDescribed = _settings.Faults == TrialFaults.Each && number < _trials.Faults.Length;
        int row = _settings.Faults == TrialFaults.Each ? Math.Max(0, number - _trials.Faults.Length) : number;
        int chosen = asDescribed || _settings.Faults == TrialFaults.Each ? 0 : _orders[ScenarioStream][row] % _trials.Scenarios.Length;
        ImmutableArray<FaultDraw> faults = Faults(number, chosen);
        Scenario scenario = AsDescribed(_trials, chosen);
        string recipe = TrialDescription.ScenariosOwn;
        ImmutableArray<double> values = [.. _trials.Tolerances.Select(_ => double.NaN)];
        ImmutableArray<double> delays = [.. scenario.Operator.Select(rule => rule.DelaySeconds)];
        if (!asDescribed)
        {
            (recipe, ImmutableArray<ParameterSetting> settings) = _trials.Recipes[_orders[RecipeStream][row] % _trials.Recipes.Length];
            OperatorRule[] rules = [.. _trials.Description.Operator.Select((spread, index) => Rule(spread, index, row))];
            (ImmutableArray<PlantChange> changes, values) = Tolerances(row);
            delays = [.. rules.Select(rule => rule.Manner == OperatorManner.Never ? double.NaN : rule.DelaySeconds + rule.LateSeconds)];
            scenario = TrialFit.WithOperator(_trials.Scenarios[chosen], rules) with
            {
                Seed = (int)(SeededDraws.Share(_settings.Seed, SeedStream, (ulong)number) * MostSeed),
                Settings = [.. _trials.Scenarios[chosen].Settings, .. settings],
                PlantChanges = [.. _trials.Scenarios[chosen].PlantChanges, .. changes],
            };
        }

        string words = faults.IsEmpty ? "" : $": {string.Join(" and ", faults.Select(fault => fault.Fault))}";
        scenario = scenario with
        {
            Name = string.Create(CultureInfo.InvariantCulture, $"run {run}{words}"),
            Recipe = null,
            Actions = [.. scenario.Actions, .. faults.Select(fault => new ScriptedAction(new Moment(new Event.Start(), fault.Seconds, scenario.Span), new Deed.Inject(fault.Fault), scenario.Span))],
            Expectations = faults.IsEmpty ? scenario.Expectations : [],
        };
        return new TrialDraw(run, scenario, _trials.Scenarios[chosen].Name, recipe, faults, values, delays);
    }

    private static OperatorRule Rule(OperatorSpread spread, OperatorManner manner, double delay) => new(
        spread.Prompt, spread.Answer, Tenths(delay), manner, manner == OperatorManner.Late ? spread.LateSeconds : 0, manner == OperatorManner.Wrong ? spread.WrongAnswer : "", spread.Span);

    /// <summary>The double next to the decimal, so that the written time is the drawn one.</summary>
    private static double Tenths(double seconds) => Math.Round(seconds * 10.0) / 10.0;

    private IEnumerable<ulong> Streams() =>
    [
        ScenarioStream,
        RecipeStream,
        .. Enumerable.Range(0, _trials.Tolerances.Length).Select(index => ToleranceStreams + (ulong)index),
        .. Enumerable.Range(0, _trials.Description.Operator.Length).SelectMany(index => new[] { OperatorStreams + (2 * (ulong)index), OperatorStreams + (2 * (ulong)index) + 1 }),
    ];

    /// <summary>A place in the run's part of the range, 0 to 1.</summary>
    private double Stratum(ulong stream, int row) =>
        (_orders[stream][row] + SeededDraws.Share(_settings.Seed, ~stream, (ulong)row)) / _drawn;

    private (ImmutableArray<PlantChange> Changes, ImmutableArray<double> Values) Tolerances(int row)
    {
        ImmutableArray<PlantChange>.Builder changes = ImmutableArray.CreateBuilder<PlantChange>();
        ImmutableArray<double>.Builder values = ImmutableArray.CreateBuilder<double>();
        for (int index = 0; index < _trials.Tolerances.Length; index++)
        {
            Tolerance tolerance = _trials.Tolerances[index];
            double drawn = tolerance.Low + (Stratum(ToleranceStreams + (ulong)index, row) * (tolerance.High - tolerance.Low));
            (string text, double value) = ToleranceFit.Written(drawn, tolerance.Unit);
            changes.Add(new PlantChange(tolerance.Place, tolerance.Written with { Value = text }));
            values.Add(value);
        }

        return (changes.ToImmutable(), values.ToImmutable());
    }

    private OperatorRule Rule(OperatorSpread spread, int index, int row)
    {
        double delay = spread.SoonestSeconds + (Stratum(OperatorStreams + (2 * (ulong)index), row) * (spread.LatestSeconds - spread.SoonestSeconds));
        double manner = Stratum(OperatorStreams + (2 * (ulong)index) + 1, row);
        return Rule(
            spread,
            manner < spread.Never ? OperatorManner.Never
                : manner < spread.Never + spread.Wrong ? OperatorManner.Wrong
                : manner < spread.Never + spread.Wrong + spread.Late ? OperatorManner.Late
                : OperatorManner.AsMeant,
            delay);
    }

    private ImmutableArray<FaultDraw> Faults(int number, int scenario)
    {
        switch (_settings.Faults)
        {
            case TrialFaults.Each:
                int round = number / _trials.Faults.Length;
                int rounds = Runs / _trials.Faults.Length;
                return [Fault(_trials.Faults[number % _trials.Faults.Length], scenario, (round + Share(MomentStream, number)) / rounds)];
            case TrialFaults.Pairs:
                (int first, int second) = Pair(_orders[PairStream][number]);
                return
                [
                    Fault(_trials.Faults[first], scenario, Share(MomentStream, number)),
                    Fault(_trials.Faults[second], scenario, Share(MomentStream + 1, number)),
                ];
            default:
                return [];
        }
    }

    private FaultDraw Fault(string fault, int scenario, double share) => new(fault, _windows[scenario].Moment(fault, share));

    private double Share(ulong stream, int number) => SeededDraws.Share(_settings.Seed, stream, (ulong)number);

    /// <summary>The pairs in a row: of the first fault with each after it, of the second with each after it, and so on.</summary>
    private (int First, int Second) Pair(int place)
    {
        int first = 0;
        for (int with = _trials.Faults.Length - 1; place >= with; with--)
        {
            place -= with;
            first++;
        }

        return (first, first + 1 + place);
    }
}
