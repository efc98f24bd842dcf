using Sequencer.Control.TransitionSystems;
using Sequencer.Language.Programs;
using Sequencer.Text;

namespace Sequencer.Lowering;

/// <summary>Inputs as facts and readings: wiring, delays, filter time and last good value.</summary>
internal sealed class Signals
{
    private readonly UnitScan _scan;
    private readonly Dictionary<string, Expression> _switches = new(StringComparer.Ordinal);
    private readonly Dictionary<string, (Expression Value, Expression Good)> _readings = new(StringComparer.Ordinal);
    private readonly Dictionary<string, Expression> _usable = new(StringComparer.Ordinal);
    private readonly Dictionary<string, (Expression Value, Expression Fault)> _channels = new(StringComparer.Ordinal);
    private readonly HashSet<string> _open = new(StringComparer.Ordinal);

    public Signals(UnitScan scan)
    {
        _scan = scan;
        DeclaredState ran = scan.System.State(scan.Named("ran"), false, retained: false, StatePurpose.Control, new Origin(scan.Unit.Span));
        ran.Next = scan.Build.True;
        FirstScan = scan.Build.Not(ran.Current);
        foreach (SwitchInput input in scan.Unit.SwitchInputs)
        {
            _switches[input.Tag] = LowerSwitch(input);
        }

        foreach (AnalogueInput input in scan.Unit.AnalogueInputs)
        {
            _readings[input.Tag] = LowerReading(input);
        }
    }

    /// <summary>The first scan after a cold start or a loss of power.</summary>
    public Expression FirstScan { get; }

    public Expression Switch(SwitchInput input) => _switches[input.Tag];

    public Expression Reading(AnalogueInput input) => _readings[input.Tag].Value;

    /// <summary>The channel's value and fault as they come in, before the filter.</summary>
    public (Expression Value, Expression Fault) Channel(AnalogueInput input) => _channels[input.Tag];

    public Expression Usable(AnalogueInput input)
    {
        if (_usable.TryGetValue(input.Tag, out Expression? known))
        {
            return known;
        }

        if (!_open.Add(input.Tag))
        {
            throw new InvalidOperationException($"the usability of {input.Tag} depends on itself");
        }

        Expression usable = _readings[input.Tag].Good;
        if (input.UsableWhile is not null)
        {
            Truth meaning = ConditionLowering.Lower(_scan, input.UsableWhile, new ConditionPlace($"{input.Tag}.usable"));
            usable = _scan.Build.And(usable, meaning.Surely);
        }

        _scan.System.Define($"{input.Tag}.usable", usable, new Origin(input.Span));
        return _usable[input.Tag] = usable;
    }

    /// <summary>
    /// The contact with its polarity; a delay lets a change count only after it has lasted so long. In
    /// the first scan the contact counts as it is.
    /// </summary>
    private Expression LowerSwitch(SwitchInput input)
    {
        ExpressionBuilder build = _scan.Build;
        Expression contact = _scan.System.Input($"{input.Tag}.contact");
        Expression raw = input.NormallyClosed ? build.Not(contact) : contact;
        Origin origin = new(input.Span);
        long on = input.OnDelay.Scans(_scan.ScanMilliseconds);
        long off = input.OffDelay.Scans(_scan.ScanMilliseconds);
        if (on == 0 && off == 0)
        {
            return _scan.System.Define(input.Tag, raw, origin);
        }

        DeclaredState settled = _scan.System.State($"{input.Tag}.settled", false, retained: false, StatePurpose.Control, origin);
        DeclaredState clock = _scan.System.State($"{input.Tag}.clock", new IntegerRange(0, Math.Max(on, off)), 0, retained: false, StatePurpose.Control, origin);
        Expression delay = build.IfThenElse(settled.Current, build.Constant(off), build.Constant(on));
        Expression accept = build.Or(FirstScan, build.LessOrEqual(delay, clock.Current));
        Expression now = build.IfThenElse(accept, raw, settled.Current);
        settled.Next = now;
        clock.Next = build.IfThenElse(
            build.Equal(now, raw), build.Constant(0), Clocks.UpTo(build, clock.Current, Math.Max(on, off)));
        return _scan.System.Define(input.Tag, now, origin);
    }

    /// <summary>
    /// While the channel is bad its last good value stands in; after the filter time the reading is bad.
    /// The clock starts full, so that a channel that is bad from the start is bad at once.
    /// </summary>
    private (Expression Value, Expression Good) LowerReading(AnalogueInput input)
    {
        ExpressionBuilder build = _scan.Build;
        Origin origin = new(input.Span);
        IntegerRange range = new(input.Minimum, input.Maximum);
        Expression value = _scan.System.Input(input.Tag, range);
        Expression fault = _scan.System.Input($"{input.Tag}.fault");
        _channels[input.Tag] = (value, fault);
        (value, fault) = _scan.Calibrations.Taken(input, value, fault);
        DeclaredState held = _scan.System.State($"{input.Tag}.held", range, input.Minimum, retained: false, StatePurpose.Control, origin);
        Expression reading = build.IfThenElse(fault, held.Current, value);
        held.Next = reading;
        long filter = input.BadAfter.Scans(_scan.ScanMilliseconds);
        Expression bad = fault;
        if (filter > 0)
        {
            DeclaredState clock = _scan.System.State($"{input.Tag}.bad_clock", new IntegerRange(0, filter), filter, retained: false, StatePurpose.Control, origin);
            bad = build.And(fault, build.LessOrEqual(build.Constant(filter), clock.Current));
            clock.Next = build.IfThenElse(fault, Clocks.UpTo(build, clock.Current, filter), build.Constant(0));
        }

        _scan.System.Define($"{input.Tag}.reading", reading, origin);
        return (reading, build.Not(bad));
    }
}
