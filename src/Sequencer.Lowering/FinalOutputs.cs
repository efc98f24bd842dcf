using Sequencer.Control.TransitionSystems;
using Sequencer.Language.Programs;
using Sequencer.Text;

namespace Sequencer.Lowering;

/// <summary>
/// From demand to what is written. A condition of an interlock may name other outputs and means what
/// this scan writes, so outputs are resolved in the order of their dependence; the checker has refused
/// circles. An emergency overrules demand, protections and manual alike.
/// </summary>
internal sealed class FinalOutputs
{
    private readonly UnitScan _scan;
    private readonly Dictionary<string, Expression> _finals = new(StringComparer.Ordinal);
    private readonly Dictionary<string, Expression> _blocks = new(StringComparer.Ordinal);
    private readonly Dictionary<string, DeclaredState> _refusals = new(StringComparer.Ordinal);
    private readonly Dictionary<string, DeclaredState> _off = new(StringComparer.Ordinal);
    private readonly Dictionary<string, (Expression Manual, Expression Demand)> _manual = new(StringComparer.Ordinal);
    private readonly Dictionary<string, Expression> _asked = new(StringComparer.Ordinal);
    private readonly HashSet<string> _open = new(StringComparer.Ordinal);

    public FinalOutputs(UnitScan scan)
    {
        _scan = scan;
        foreach (Output output in scan.Unit.Outputs)
        {
            _manual[output.Tag] = (scan.System.Input($"{output.Tag}.manual"), scan.System.Input($"{output.Tag}.manual.demand"));
        }

        foreach (Permissive permissive in scan.Unit.Permissives.Where(permissive => permissive.Patience is not null))
        {
            long patience = permissive.Patience.GetValueOrDefault().Scans(scan.ScanMilliseconds);
            foreach (Output output in permissive.Outputs)
            {
                _refusals[Refusal(permissive, output)] = scan.System.State(
                    Refusal(permissive, output), new IntegerRange(0, patience), 0, retained: false, StatePurpose.Control, new Origin(permissive.Span));
            }
        }

        foreach (Exclusion exclusion in scan.Unit.Exclusions)
        {
            foreach (Output output in exclusion.Outputs)
            {
                long between = exclusion.Between.Scans(scan.ScanMilliseconds);
                _off[Off(exclusion, output)] = scan.System.State(
                    Off(exclusion, output), new IntegerRange(0, between), 0, retained: false, StatePurpose.Control, new Origin(exclusion.Span));
            }
        }
    }

    /// <summary>A start refused for too long asks for the permissive's reaction.</summary>
    public Expression Ask(Reaction reaction) => _scan.Build.Or(
        from permissive in _scan.Unit.Permissives
        where permissive.Patience is not null && permissive.Reaction == reaction
        from output in permissive.Outputs
        select Impatient(permissive, output));

    public Expression Of(Output output)
    {
        if (_finals.TryGetValue(output.Tag, out Expression? known))
        {
            return known;
        }

        if (!_open.Add(output.Tag))
        {
            throw new InvalidOperationException($"the protections of {output.Tag} depend on themselves");
        }

        ExpressionBuilder build = _scan.Build;
        Origin origin = new(output.Span);
        Expression demand = _scan.System.Define($"{output.Tag}.demand", Demand(output), origin);
        Expression permitted = demand;
        foreach (Permissive permissive in _scan.Unit.Permissives.Where(permissive => Names(permissive.Outputs, output)))
        {
            Truth condition = ConditionLowering.Lower(
                _scan, permissive.Condition, new ConditionPlace(Refusal(permissive, output), thisScansOutputs: true));
            Expression starts = build.And(demand, build.Not(_scan.LastWritten(output)));
            Expression refused = build.And(starts, build.Not(condition.Surely), _scan.Site.Forces.Of(_scan.Own(permissive.Name)));
            permitted = build.And(permitted, build.Not(refused));
            CountRefusal(permissive, output, refused);
        }

        Expression blocked = _scan.System.Define($"{output.Tag}.blocked", Blocked(output), origin);
        Expression guarded = build.IfThenElse(blocked, RestValues.Value(_scan, output, output.Safe, "safe"), permitted);
        Expression final = build.IfThenElse(_scan.Emergency, RestValues.Value(_scan, output, output.Emergency, "emergency"), guarded);
        return _finals[output.Tag] = final;
    }

    /// <summary>Where the device is, which is where it is told to be unless it has failed.</summary>
    public Expression InPlant(Output output) => _scan.Site.Failing.Position(output.Tag) is { } position
        ? _scan.Site.Failing.Instead(position, Of(output), new Origin(output.Span))
        : Of(output);

    /// <summary>Where the last scan left the device.</summary>
    public Expression WasInPlant(Output output) => _scan.Site.Failing.Position(output.Tag) is { } position
        ? _scan.Site.Failing.InsteadBefore(position, _scan.LastWritten(output), new Origin(output.Span))
        : _scan.LastWritten(output);

    public Expression InManual(Output output) => _manual[output.Tag].Manual;

    /// <summary>Some step demands the output, whatever else has a say.</summary>
    public Expression Asked(Output output)
    {
        Of(output);
        return _asked[output.Tag];
    }

    /// <summary>An interlock blocks the output; what keeps it apart from others is left out.</summary>
    public Expression Interlocked(Output output) =>
        _scan.Build.Or(_scan.Unit.Interlocks.Where(interlock => Names(interlock.Outputs, output)).Select(Blocks));

    public void Finish()
    {
        foreach (Output output in _scan.Unit.Outputs)
        {
            _scan.System.Output(output.Tag, Of(output), new Origin(output.Span));
        }

        ExpressionBuilder build = _scan.Build;
        foreach (Exclusion exclusion in _scan.Unit.Exclusions)
        {
            foreach (Output output in exclusion.Outputs)
            {
                DeclaredState off = _off[Off(exclusion, output)];
                long between = off.Variable.Range.Maximum;
                off.Next = build.IfThenElse(Of(output), build.Constant(0), Clocks.UpTo(build, off.Current, between));
            }
        }
    }

    private Expression Demand(Output output)
    {
        ExpressionBuilder build = _scan.Build;
        (Expression on, Expression off) = StepDemands.Of(_scan, output);
        _asked[output.Tag] = build.And(on, build.Not(off));
        Expression held = output.Held is null
            ? build.False
            : build.Or(_scan.State.IsNow(ProceduralState.Holding), _scan.State.IsNow(ProceduralState.Held), _scan.State.IsNow(ProceduralState.Restarting));
        Expression rest = build.IfThenElse(
            held,
            RestValues.Value(_scan, output, output.Held ?? output.Safe, "held"),
            RestValues.Value(_scan, output, output.Safe, "safe"));
        Expression automatic = build.And(build.Not(off), build.Or(on, rest));
        (Expression manual, Expression manualDemand) = _manual[output.Tag];
        return build.IfThenElse(manual, manualDemand, automatic);
    }

    private Expression Blocked(Output output)
    {
        ExpressionBuilder build = _scan.Build;
        IEnumerable<Expression> interlocks = _scan.Unit.Interlocks
            .Where(interlock => Names(interlock.Outputs, output)).Select(Blocks);
        IEnumerable<Expression> exclusions = _scan.Unit.Exclusions
            .Where(exclusion => Names(exclusion.Outputs, output)).Select(exclusion => Excludes(exclusion, output));
        return build.Or([.. interlocks, .. exclusions, _scan.Memory.Exhausted(output)]);
    }

    /// <summary>The interlock is in force in this scan.</summary>
    public Expression Blocks(Interlock interlock)
    {
        if (_blocks.TryGetValue(interlock.Name, out Expression? known))
        {
            return known;
        }

        ExpressionBuilder build = _scan.Build;
        Origin origin = new(interlock.Span);
        Truth condition = ConditionLowering.Lower(_scan, interlock.Condition, new ConditionPlace(_scan.Own(interlock.Name), thisScansOutputs: true));
        Expression blocks = interlock.Form switch
        {
            InterlockForm.While => condition.Possibly,
            InterlockForm.Unless => build.Not(condition.Surely),
            InterlockForm.FromUntil => FromUntil(interlock, condition, origin),
            _ => throw new System.Diagnostics.UnreachableException($"no meaning of {interlock.Form}"),
        };
        blocks = build.And(blocks, build.Not(_scan.Overrides.Now(interlock.Name)), _scan.Site.Forces.Of(_scan.Own(interlock.Name)));
        return _blocks[interlock.Name] = _scan.System.Define(_scan.Own($"{interlock.Name}.blocks"), blocks, origin);
    }

    private Expression FromUntil(Interlock interlock, Truth condition, Origin origin)
    {
        ExpressionBuilder build = _scan.Build;
        DeclaredState latched = _scan.System.State(_scan.Own($"{interlock.Name}.latched"), false, retained: true, StatePurpose.Control, origin);
        Truth release = ConditionLowering.Lower(
            _scan,
            interlock.Release ?? throw new InvalidOperationException($"{interlock.Name} has no release"),
            new ConditionPlace(_scan.Own($"{interlock.Name}.release"), thisScansOutputs: true));
        Expression reset = interlock.NeedsReset ? _scan.Commands.ResetOf(interlock.Group) : build.True;
        Expression now = build.Or(condition.Possibly, build.And(latched.Current, build.Not(build.And(release.Surely, reset))));
        latched.Next = now;
        return now;
    }

    /// <summary>Another one ran within the time, or an earlier written one runs now.</summary>
    private Expression Excludes(Exclusion exclusion, Output output)
    {
        ExpressionBuilder build = _scan.Build;
        int place = exclusion.Outputs.IndexOf(exclusion.Outputs.First(member => member.Tag == output.Tag));
        List<Expression> reasons = [];
        for (int index = 0; index < exclusion.Outputs.Length; index++)
        {
            if (index == place)
            {
                continue;
            }

            Output other = exclusion.Outputs[index];
            DeclaredState off = _off[Off(exclusion, other)];
            reasons.Add(build.Less(off.Current, build.Constant(off.Variable.Range.Maximum)));
            if (index < place)
            {
                reasons.Add(Of(other));
            }
        }

        Expression excludes = build.And(build.Or(reasons), _scan.Site.Forces.Of(_scan.Own(exclusion.Name)));
        return _scan.System.Define(_scan.Own($"{exclusion.Name}.{output.Tag}.blocks"), excludes, new Origin(exclusion.Span));
    }

    private void CountRefusal(Permissive permissive, Output output, Expression refused)
    {
        if (_refusals.TryGetValue(Refusal(permissive, output), out DeclaredState? clock))
        {
            ExpressionBuilder build = _scan.Build;
            clock.Next = build.IfThenElse(refused, Clocks.UpTo(build, clock.Current, clock.Variable.Range.Maximum), build.Constant(0));
            _scan.System.Alarm(Refusal(permissive, output), $"{output.Tag} may not start: {permissive.Title}", Impatient(permissive, output), new Origin(permissive.Span));
        }
    }

    private Expression Impatient(Permissive permissive, Output output)
    {
        DeclaredState clock = _refusals[Refusal(permissive, output)];
        return _scan.Build.LessOrEqual(_scan.Build.Constant(clock.Variable.Range.Maximum), clock.Current);
    }

    private static bool Names(IEnumerable<Output> outputs, Output output) => outputs.Any(member => member.Tag == output.Tag);

    private string Refusal(Permissive permissive, Output output) => _scan.Own($"{permissive.Name}.{output.Tag}.refused");

    private string Off(Exclusion exclusion, Output output) => _scan.Own($"{exclusion.Name}.{output.Tag}.off");
}
