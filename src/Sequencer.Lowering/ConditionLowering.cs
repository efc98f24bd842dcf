using Sequencer.Control.TransitionSystems;
using Sequencer.Language.Programs;
using Sequencer.Text;

namespace Sequencer.Lowering;

/// <summary>Conditions as pairs of Booleans. Their depth is bounded by the language's bracket limit.</summary>
internal static class ConditionLowering
{
    public static Truth Lower(UnitScan scan, Condition condition, ConditionPlace place)
    {
        ExpressionBuilder build = scan.Build;
        return condition switch
        {
            ConstantCondition constant => Truth.Known(build.Constant(constant.Value)),
            AllOf all => Truth.All(build, [.. all.Conditions.Select(part => Lower(scan, part, place))]),
            AnyOf any => Truth.Any(build, [.. any.Conditions.Select(part => Lower(scan, part, place))]),
            Negation negation => Truth.Not(build, Lower(scan, negation.Condition, place)),
            SwitchFact fact => Truth.Known(scan.Sight.Switch(fact.Input, place)),
            OutputFact fact => Truth.Known(Output(scan, fact, place)),
            DosedFact fact => Truth.Known(scan.Doses.Dosed(fact.Step, fact.Output)),
            AnsweredFact fact => Truth.Known(scan.Prompts.Answered(fact)),
            StartedFact fact => Truth.Known(scan.Site.Unit(fact.Unit).Requests.TakenFrom(scan.Unit.Name)),
            OwnerFact fact => Truth.Known(scan.Site.Queue(fact.Equipment).Owns(fact.Unit)),
            NamedFact fact => scan.Sight.Fact(fact.Fact, place),
            LatchFact fact => Truth.Known(scan.Sight.Latch(fact.Latch)),
            TripFact fact => Truth.Known(scan.Sight.Trip(fact.Trip)),
            VoteFact fact => scan.Votes.Of(fact.Vote),
            DutyFact fact => Truth.Known(scan.Pairs.OnDuty(fact)),
            OverrideFact fact => Truth.Known(scan.Overrides.Now(fact.Protection)),
            StepFact fact => Truth.Known(scan.Sight.Step(fact)),
            StateFact fact => Truth.Known(scan.Sight.State(fact)),
            UsableFact fact => Truth.Known(scan.Sight.Usable(fact.Input, place)),
            CompareFact fact => Compare(scan, fact, place),
            WithinFact fact => Within(scan, fact, place),
            StaysFact fact => Stays(scan, fact, place),
            LingersFact fact => Lingers(scan, fact, place),
            DeadbandFact fact => Deadband(scan, fact, place),
            EdgeFact fact => Edge(scan, fact, place),
            _ => throw new System.Diagnostics.UnreachableException($"no meaning of {condition.GetType().Name}"),
        };
    }

    private static Expression Output(UnitScan scan, OutputFact fact, ConditionPlace place)
    {
        Expression on = scan.Sight.Written(fact.Output, place);
        return fact.Kind switch
        {
            OutputFactKind.On => on,
            OutputFactKind.Proved => scan.Build.And(on, scan.Confirms(fact.Output, scan.Build.True)),
            OutputFactKind.Failed => scan.Sight.Failed(fact.Output),
            _ => throw new System.Diagnostics.UnreachableException($"no meaning of {fact.Kind}"),
        };
    }

    private static Truth Compare(UnitScan scan, CompareFact fact, ConditionPlace place)
    {
        Expression[] sides = QuantityLowering.InCommonMeasure(scan, place, fact.Left, fact.Right);
        ExpressionBuilder build = scan.Build;
        Expression comparison = fact.Comparison switch
        {
            Comparison.Less => build.Less(sides[0], sides[1]),
            Comparison.LessOrEqual => build.LessOrEqual(sides[0], sides[1]),
            Comparison.Greater => build.Greater(sides[0], sides[1]),
            Comparison.GreaterOrEqual => build.GreaterOrEqual(sides[0], sides[1]),
            _ => throw new System.Diagnostics.UnreachableException($"no meaning of {fact.Comparison}"),
        };
        return Truth.Measured(build, QuantityLowering.Usable(scan, place, fact.Left, fact.Right), comparison);
    }

    private static Truth Within(UnitScan scan, WithinFact fact, ConditionPlace place)
    {
        Expression[] sides = QuantityLowering.InCommonMeasure(scan, place, fact.Lower, fact.Value, fact.Upper);
        ExpressionBuilder build = scan.Build;
        Expression inside = build.And(build.LessOrEqual(sides[0], sides[1]), build.LessOrEqual(sides[1], sides[2]));
        return Truth.Measured(build, QuantityLowering.Usable(scan, place, fact.Lower, fact.Value, fact.Upper), inside);
    }

    private static Truth Stays(UnitScan scan, StaysFact fact, ConditionPlace place)
    {
        Truth lasting = Lower(scan, fact.Condition, place);
        ExpressionBuilder build = scan.Build;
        if (fact.AfterLastPulse && place.Step is not null)
        {
            Truth quiet = Truth.Known(build.Not(scan.PulseAtStart(place.Step)));
            lasting = Truth.All(build, [lasting, quiet]);
        }

        Expression Gate() => place.Step is null ? build.True : build.And(scan.StepNow(place.Step.Number), scan.WorksNow(place.Step));
        Expression Anew() => place.Step is null ? build.False : scan.Activated(place.Step.Number);
        long scans = fact.Time.Scans(scan.ScanMilliseconds);
        Origin origin = new(fact.Span);
        string name = place.NextName("stays");
        Expression surely = Clocks.Lasting(scan.System, name, lasting.Surely, scans, Gate, Anew, place.Purpose, origin);
        Expression possibly = lasting.Possibly == lasting.Surely
            ? surely
            : Clocks.Lasting(scan.System, name + ".possibly", lasting.Possibly, scans, Gate, Anew, place.Purpose, origin);
        return new Truth(surely, possibly);
    }

    private static Truth Lingers(UnitScan scan, LingersFact fact, ConditionPlace place)
    {
        Truth inner = Lower(scan, fact.Condition, place);
        long scans = fact.Time.Scans(scan.ScanMilliseconds);
        string name = place.NextName("lingers");
        Expression surely = Clocks.Lingering(scan.System, name, inner.Surely, scans, place.Purpose, new Origin(fact.Span));
        Expression possibly = inner.Possibly == inner.Surely
            ? surely
            : Clocks.Lingering(scan.System, name + ".possibly", inner.Possibly, scans, place.Purpose, new Origin(fact.Span));
        return new Truth(surely, possibly);
    }

    private static Truth Deadband(UnitScan scan, DeadbandFact fact, ConditionPlace place)
    {
        Truth raise = Compare(scan, fact.Raise, place);
        Truth keep = Compare(scan, fact.Keep, place);
        string name = place.NextName("deadband");
        return new Truth(
            Kept(scan, name, raise.Surely, keep.Surely, place, fact.Span),
            Kept(scan, name + ".possibly", raise.Possibly, keep.Possibly, place, fact.Span));
    }

    private static Expression Kept(UnitScan scan, string name, Expression raise, Expression keep, ConditionPlace place, SourceSpan span)
    {
        DeclaredState before = scan.System.State(name, initial: false, retained: false, place.Purpose, new Origin(span));
        return before.Next = scan.Build.Or(raise, scan.Build.And(before.Current, keep));
    }

    /// <summary>
    /// Rising: surely so now and surely not the scan before. The memories start on the side that gives
    /// no edge in the first scan.
    /// </summary>
    private static Truth Edge(UnitScan scan, EdgeFact fact, ConditionPlace place)
    {
        Truth now = Lower(scan, fact.Condition, place);
        if (!fact.Rising)
        {
            now = Truth.Not(scan.Build, now);
        }

        string name = place.NextName(fact.Rising ? "rising" : "falling");
        Expression surelyBefore = Before(scan, name, now.Surely, place, fact.Span);
        Expression possiblyBefore = now.Possibly == now.Surely
            ? surelyBefore
            : Before(scan, name + ".possibly", now.Possibly, place, fact.Span);
        return new Truth(
            scan.Build.And(now.Surely, scan.Build.Not(possiblyBefore)),
            scan.Build.And(now.Possibly, scan.Build.Not(surelyBefore)));
    }

    private static Expression Before(UnitScan scan, string name, Expression now, ConditionPlace place, SourceSpan span)
    {
        DeclaredState before = scan.System.State(name, initial: true, retained: false, place.Purpose, new Origin(span));
        before.Next = now;
        return before.Current;
    }
}
