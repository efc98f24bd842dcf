using Sequencer.Simulation.Loop;
using Sequencer.Simulation.Scenarios;
using Sequencer.Simulation.Words;

namespace Sequencer.Simulation.Running;

/// <summary>A value inside its bounds, in every scan or in the last.</summary>
internal sealed class ValueCheck : Check
{
    private readonly Expectation.ValueWithin _expectation;
    private readonly ValueSource _source;
    private readonly double _minimum;
    private readonly double _maximum;
    private double _lowest = double.PositiveInfinity;
    private double _highest = double.NegativeInfinity;
    private double _last = double.NaN;
    private double _offending;
    private long? _outside;

    private ValueCheck(Expectation.ValueWithin expectation, EventWatch? since, ValueSource source, double minimum, double maximum)
        : base(expectation, since)
    {
        _expectation = expectation;
        _source = source;
        _minimum = minimum;
        _maximum = maximum;
    }

    public static ValueCheck? Bind(Expectation.ValueWithin expectation, EventWatch? since, ScenarioBinder binder)
    {
        if (binder.Names.Value(expectation.Name, expectation.Span) is not ValueSource source)
        {
            return null;
        }

        double? minimum = Bound(expectation.Minimum, double.NegativeInfinity, source, expectation, binder);
        double? maximum = Bound(expectation.Maximum, double.PositiveInfinity, source, expectation, binder);
        return minimum is double low && maximum is double high ? new ValueCheck(expectation, since, source, low, high) : null;
    }

    protected override bool CountsAtEnd => !_expectation.Always;

    protected override string Words()
    {
        string bounds = (_expectation.Minimum, _expectation.Maximum) switch
        {
            (Measure low, Measure high) => $"from {low} to {high}",
            (Measure low, null) => $"at least {low}",
            (null, Measure high) => $"at most {high}",
            _ => "anything",
        };
        return $"{_source.Name} is {bounds} {(_expectation.Always ? "always" : "at the end")}";
    }

    /// <summary>A value that does not exist (pH of an empty tank) is outside nothing until the end asks for it.</summary>
    protected override void See(ClosedLoop loop)
    {
        _last = loop.Value(_source);
        if (double.IsNaN(_last))
        {
            return;
        }

        _lowest = Math.Min(_lowest, _last);
        _highest = Math.Max(_highest, _last);
        if (_outside is null && Outside(_last))
        {
            _outside = loop.ScanNumber;
            _offending = _last;
        }
    }

    protected override ExpectationResult Judge(ClosedLoop loop)
    {
        if (!_expectation.Always)
        {
            return Judged(!Outside(_last), $"{Shown(_last)} at the end", null);
        }

        if (double.IsPositiveInfinity(_lowest))
        {
            return Judged(false, "never had a value", null);
        }

        return _outside is long scan
            ? Judged(false, $"{Shown(_offending)} at {DurationWords.Clock(loop.SecondsAt(scan))}; {Shown(_lowest)} to {Shown(_highest)} in all", scan)
            : Judged(true, $"{Shown(_lowest)} to {Shown(_highest)}", null);
    }

    /// <summary>Forgives the rounding of integer times resolution, so that a bound on a step of the resolution includes that step.</summary>
    private bool Outside(double value) => !(value >= _minimum - (_source.Resolution * Rounding) && value <= _maximum + (_source.Resolution * Rounding));

    private const double Rounding = 1e-9;

    private string Shown(double value) => _source.Origin is ValueOrigin.PlantQuantity or ValueOrigin.PlantTotal
        ? ValueWords.Significant(value, 4, _source.Unit)
        : ValueWords.Of(value, _source.Decimals, _source.Unit);

    private static double? Bound(Measure? written, double otherwise, ValueSource source, Expectation.ValueWithin expectation, ScenarioBinder binder) =>
        written is Measure measure ? binder.Names.InUnitOf(source, measure, expectation.Span) : otherwise;
}
