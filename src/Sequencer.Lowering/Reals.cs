using Sequencer.Control.TransitionSystems;
using Sequencer.Language.Programs;
using Sequencer.Language.Units;
using Sequencer.Text;

namespace Sequencer.Lowering;

/// <summary>
/// What is truly so beside a reading: a value that nothing controls, within the reading's tolerance of it while the channel is
/// good, and no faster than its rates. Only requirements read it; no controller has it.
/// </summary>
internal sealed class Reals
{
    /// <summary>Counting in whole steps alone makes a value seem one step ahead of its rate.</summary>
    private const long Rounding = 1;

    private readonly UnitScan _scan;
    private readonly Dictionary<string, Expression> _values = new(StringComparer.Ordinal);

    public Reals(UnitScan scan)
    {
        _scan = scan;
        foreach (Real real in scan.Unit.Reals)
        {
            _values[real.Name] = scan.System.Input(scan.Own($"{real.Name}.real"), new IntegerRange(real.Minimum, real.Maximum));
        }
    }

    public Expression Value(string real) => _values[real];

    /// <summary>When all that the rates may lean on is declared.</summary>
    public void Assume()
    {
        ExpressionBuilder build = _scan.Build;
        foreach (Real real in _scan.Unit.Reals)
        {
            Expression value = Value(real.Name);
            (Expression channel, Expression fault) = _scan.Signals.Channel(real.Input);
            Expression within = build.Constant(real.Within);
            Expression near = build.And(
                build.LessOrEqual(build.Subtract(channel, value), within), build.LessOrEqual(build.Subtract(value, channel), within));
            string name = _scan.Own($"{real.Name}.read");
            _scan.System.Assume(new Assumption(name, $"{real.Input.Tag} shows {real.Name} while its channel is good", build.Or(fault, near), new Origin(real.Span)));
            foreach (RealRate rate in real.Rates)
            {
                Assume(real, rate, value);
            }
        }
    }

    private void Assume(Real real, RealRate rate, Expression value)
    {
        ExpressionBuilder build = _scan.Build;
        string way = rate.Rises ? "rises" : "falls";
        string name = _scan.Own($"{real.Name}.{way}");
        Origin origin = new(rate.Span);
        Rational perScan = rate.PerSecond * new Rational(_scan.ScanMilliseconds, 1000) / real.Input.Resolution;
        Expression allowed = build.Constant((long)perScan.Numerator);
        if (rate.While is not null)
        {
            Expression acts = ConditionLowering.Lower(_scan, rate.While, new ConditionPlace($"{name}.while", purpose: StatePurpose.Monitor, ofPlant: true)).Possibly;
            allowed = build.IfThenElse(acts, allowed, build.Constant(0));
        }

        Expression scaled = build.Scale(rate.Rises ? (long)perScan.Denominator : -(long)perScan.Denominator, value);
        Expression holds = Envelope.Holds(_scan.System, name, scaled, build.False, allowed, (long)perScan.Denominator * Rounding, StatePurpose.Monitor, origin);
        _scan.System.Assume(new Assumption(name, $"{real.Name} {way} no faster than declared", holds, origin));
    }
}
