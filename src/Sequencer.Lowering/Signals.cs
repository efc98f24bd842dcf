using Sequencer.Control.TransitionSystems;
using Sequencer.Language.Programs;
using Sequencer.Lowering.Supposing;
using Sequencer.Text;

namespace Sequencer.Lowering;

/// <summary>Inputs as facts and readings: wiring, delays, filter time and last good value.</summary>
internal sealed class Signals
{
    private readonly UnitScan _scan;
    private readonly Dictionary<string, Expression> _switches = new(StringComparer.Ordinal);
    private readonly Dictionary<string, (Expression Value, Expression Good)> _readings = new(StringComparer.Ordinal);
    private readonly Dictionary<string, Expression> _trueSwitches = new(StringComparer.Ordinal);
    private readonly Dictionary<string, (Expression Value, Expression Good)> _trueReadings = new(StringComparer.Ordinal);
    private readonly Dictionary<string, Expression> _whileUsable = new(StringComparer.Ordinal);
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
            LowerSwitch(input);
        }

        foreach (AnalogueInput input in scan.Unit.AnalogueInputs)
        {
            LowerReading(input);
        }
    }

    /// <summary>The first scan after a cold start or a loss of power.</summary>
    public Expression FirstScan { get; }

    public Expression Switch(SwitchInput input) => _switches[input.Tag];

    public Expression Reading(AnalogueInput input) => _readings[input.Tag].Value;

    /// <summary>What the switch would say if it were well.</summary>
    public Expression TrueSwitch(SwitchInput input) => _trueSwitches[input.Tag];

    /// <summary>What the reading would be if it were well.</summary>
    public Expression TrueReading(AnalogueInput input) => _trueReadings[input.Tag].Value;

    /// <summary>Whether the reading would be usable if it were well.</summary>
    public Expression TrueUsable(AnalogueInput input) => _trueReadings[input.Tag] == _readings[input.Tag]
        ? Usable(input)
        : _scan.Build.And(_trueReadings[input.Tag].Good, WhileUsable(input));

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

        Expression usable = _scan.Build.And(_readings[input.Tag].Good, WhileUsable(input));
        _scan.System.Define($"{input.Tag}.usable", usable, new Origin(input.Span));
        return _usable[input.Tag] = usable;
    }

    private Expression WhileUsable(AnalogueInput input)
    {
        if (!_whileUsable.TryGetValue(input.Tag, out Expression? known))
        {
            known = input.UsableWhile is null
                ? _scan.Build.True
                : ConditionLowering.Lower(_scan, input.UsableWhile, new ConditionPlace($"{input.Tag}.usable")).Surely;
            _whileUsable.Add(input.Tag, known);
        }

        return known;
    }

    /// <summary>The contact with its polarity; a switch that confirms a failing device shows where that is.</summary>
    private void LowerSwitch(SwitchInput input)
    {
        Expression contact = _scan.System.Input($"{input.Tag}.contact");
        Expression raw = input.NormallyClosed ? _scan.Build.Not(contact) : contact;
        Failing failing = _scan.Site.Failing;
        Origin origin = new(input.Span);
        foreach (Output output in _scan.Unit.Outputs)
        {
            if (failing.Position(output.Tag) is { } position && output.Confirmation is { } confirmation && (confirmation.On.Tag == input.Tag || confirmation.Off?.Tag == input.Tag))
            {
                raw = failing.Instead(confirmation.On.Tag == input.Tag ? position : !position, raw, origin);
            }
        }

        Expression shown = failing.Position(input.Tag) is { } stuck ? failing.Instead(stuck, raw, origin) : raw;
        Expression seen = _scan.System.Define(input.Tag, Settled(input, input.Tag, shown), origin);
        _switches[input.Tag] = seen;
        _trueSwitches[input.Tag] = shown == raw ? seen : Settled(input, $"{input.Tag}.true", raw);
    }

    /// <summary>
    /// A delay lets a change count only after it has lasted so long. In
    /// the first scan the contact counts as it is.
    /// </summary>
    private Expression Settled(SwitchInput input, string name, Expression raw)
    {
        ExpressionBuilder build = _scan.Build;
        Origin origin = new(input.Span);
        long on = input.OnDelay.Scans(_scan.ScanMilliseconds);
        long off = input.OffDelay.Scans(_scan.ScanMilliseconds);
        if (on == 0 && off == 0)
        {
            return raw;
        }

        DeclaredState settled = _scan.System.State($"{name}.settled", false, retained: false, StatePurpose.Control, origin);
        DeclaredState clock = _scan.System.State($"{name}.clock", new IntegerRange(0, Math.Max(on, off)), 0, retained: false, StatePurpose.Control, origin);
        Expression delay = build.IfThenElse(settled.Current, build.Constant(off), build.Constant(on));
        Expression accept = build.Or(FirstScan, build.LessOrEqual(delay, clock.Current));
        Expression now = build.IfThenElse(accept, raw, settled.Current);
        settled.Next = now;
        clock.Next = build.IfThenElse(
            build.Equal(now, raw), build.Constant(0), Clocks.UpTo(build, clock.Current, Math.Max(on, off)));
        return now;
    }

    private void LowerReading(AnalogueInput input)
    {
        Origin origin = new(input.Span);
        IntegerRange range = new(input.Minimum, input.Maximum);
        Expression value = _scan.System.Input(input.Tag, range);
        Expression fault = _scan.System.Input($"{input.Tag}.fault");
        _channels[input.Tag] = (value, fault);
        Failing failing = _scan.Site.Failing;
        bool fails = failing.Is(input.Tag, FailureMode.Stuck, FailureMode.StuckLow, FailureMode.StuckHigh, FailureMode.Frozen);
        (Expression shown, Expression bad) = fails ? failing.Instead(input.Tag, range, value, fault, origin) : (value, fault);
        (shown, bad) = _scan.Calibrations.Taken(input, shown, bad);
        _readings[input.Tag] = Filtered(input, shown, bad);
        _trueReadings[input.Tag] = fails ? failing.True(_readings[input.Tag], value, origin) : _readings[input.Tag];
        _scan.System.Define($"{input.Tag}.reading", _readings[input.Tag].Value, origin);
    }

    /// <summary>
    /// While the channel is bad its last good value stands in; after the filter time the reading is bad.
    /// The clock starts full, so that a channel that is bad from the start is bad at once.
    /// </summary>
    private (Expression Value, Expression Good) Filtered(AnalogueInput input, Expression value, Expression fault)
    {
        ExpressionBuilder build = _scan.Build;
        Origin origin = new(input.Span);
        IntegerRange range = new(input.Minimum, input.Maximum);
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

        return (reading, build.Not(bad));
    }
}
