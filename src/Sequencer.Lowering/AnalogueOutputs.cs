using Sequencer.Control.TransitionSystems;
using Sequencer.Language.Programs;
using Sequencer.Text;

namespace Sequencer.Lowering;

/// <summary>
/// Analogue outputs: what the active steps set, moved towards at the rate allowed; forced to the safe value
/// by interlocks and to the emergency value by an emergency, at once.
/// </summary>
internal sealed class AnalogueOutputs
{
    private readonly UnitScan _scan;
    private readonly Dictionary<string, (DeclaredState Last, Expression Manual, Expression Demand)> _outputs = new(StringComparer.Ordinal);
    private readonly Dictionary<string, Expression> _finals = new(StringComparer.Ordinal);

    public AnalogueOutputs(UnitScan scan)
    {
        _scan = scan;
        foreach (AnalogueOutput output in scan.Unit.AnalogueOutputs)
        {
            IntegerRange range = new(output.Minimum, output.Maximum);
            DeclaredState last = scan.System.State($"{output.Tag}.last", range, output.Safe, retained: false, StatePurpose.Control, new Origin(output.Span));
            _outputs[output.Tag] = (last, scan.System.Input($"{output.Tag}.manual"), scan.System.Input($"{output.Tag}.manual.demand", new IntegerRange(int.MinValue, int.MaxValue)));
        }
    }

    /// <summary>What this scan writes.</summary>
    public Expression Final(AnalogueOutput output)
    {
        if (_finals.TryGetValue(output.Tag, out Expression? known))
        {
            return known;
        }

        ExpressionBuilder build = _scan.Build;
        (DeclaredState last, Expression manual, Expression wanted) = _outputs[output.Tag];
        Expression byHand = build.Maximum(build.Constant(output.Minimum), build.Minimum(wanted, build.Constant(output.Maximum)));
        Expression demand = build.IfThenElse(manual, byHand, Automatic(output));
        Expression moved = output.MostAScan is long most
            ? build.Maximum(
                build.Subtract(last.Current, build.Constant(most)),
                build.Minimum(demand, build.Add(last.Current, build.Constant(most))))
            : demand;
        Expression inside = build.Maximum(build.Constant(output.Minimum), build.Minimum(moved, build.Constant(output.Maximum)));
        Expression blocked = build.Or(_scan.Unit.Interlocks.Where(interlock => interlock.Analogues.Any(member => member.Tag == output.Tag)).Select(_scan.Finals.Blocks));
        Expression guarded = build.IfThenElse(
            _scan.System.Define($"{output.Tag}.blocked", blocked, last.Origin), build.Constant(output.Safe), inside);
        return _finals[output.Tag] = build.IfThenElse(_scan.Emergency, build.Constant(output.Emergency), guarded);
    }

    public Expression InManual(AnalogueOutput output) => _outputs[output.Tag].Manual;

    public void Finish()
    {
        foreach (AnalogueOutput output in _scan.Unit.AnalogueOutputs)
        {
            Expression final = Final(output);
            _outputs[output.Tag].Last.Next = final;
            _scan.System.Output(output.Tag, final, new Origin(output.Span));
        }
    }

    /// <summary>The checker has refused two lines that act at once.</summary>
    private Expression Automatic(AnalogueOutput output)
    {
        ExpressionBuilder build = _scan.Build;
        Expression value = build.Constant(output.Safe);
        foreach (Step step in _scan.Unit.Steps)
        {
            Expression acts = build.And(_scan.StepNow(step.Number), _scan.RunningNow, build.Not(_scan.Situation.PassedOverNow(step.Number)));
            foreach (SetAction set in step.Actions.OfType<SetAction>().Where(set => set.Output.Tag == output.Tag))
            {
                value = build.IfThenElse(acts, Value(set), value);
            }

            foreach (RampAction ramp in step.Actions.OfType<RampAction>().Where(ramp => ramp.Output.Tag == output.Tag))
            {
                value = build.IfThenElse(acts, Ramped(step, ramp, acts), value);
            }
        }

        return value;
    }

    private Expression Value(SetAction set) => set.Value is LiteralQuantity literal
        ? _scan.Build.Constant((literal.Value / set.Output.Resolution).ToInt64())
        : _scan.Build.Scale((QuantityMeasure.Resolution(set.Value, _scan.ScanMilliseconds) / set.Output.Resolution).ToInt64(), QuantityLowering.Steps(_scan, new ConditionPlace(set.Output.Tag), set.Value));

    private Expression Ramped(Step step, RampAction ramp, Expression acts)
    {
        ExpressionBuilder build = _scan.Build;
        Origin origin = new(ramp.Span);
        string name = _scan.StepNamed(step.Number, $"ramp_{ramp.Output.Tag}");
        (long scans, long whole, long rest) = ramp.Pace(_scan.ScanMilliseconds);
        (long low, long high) = (Math.Min(ramp.From, ramp.To), Math.Max(ramp.From, ramp.To));
        DeclaredState value = _scan.System.State($"{name}.value", new IntegerRange(low, high), ramp.From, retained: true, StatePurpose.Control, origin);
        Expression now = build.IfThenElse(_scan.Activated(step.Number), build.Constant(ramp.From), value.Current);
        Expression more = build.Constant(whole);
        if (rest > 0)
        {
            DeclaredState left = _scan.System.State($"{name}.rest", new IntegerRange(0, scans - 1), 0, retained: true, StatePurpose.Control, origin);
            Expression before = build.IfThenElse(_scan.Activated(step.Number), build.Constant(0), left.Current);
            Expression sum = build.Add(before, build.Constant(rest));
            Expression full = build.LessOrEqual(build.Constant(scans), sum);
            Expression after = build.IfThenElse(full, build.Subtract(sum, build.Constant(scans)), sum);
            left.Next = build.IfThenElse(acts, build.Maximum(build.Constant(0), build.Minimum(after, build.Constant(scans - 1))), before);
            more = build.IfThenElse(full, build.Constant(whole + 1), more);
        }

        Expression moved = ramp.To >= ramp.From ? build.Add(now, more) : build.Subtract(now, more);
        Expression kept = build.Maximum(build.Constant(low), build.Minimum(moved, build.Constant(high)));
        value.Next = build.IfThenElse(acts, kept, now);
        return now;
    }
}
