using Sequencer.Control.TransitionSystems;
using Sequencer.Language.Programs;
using Sequencer.Text;

namespace Sequencer.Lowering;

/// <summary>
/// Trips latch when their condition possibly holds and let go at a reset with the cause gone. Where a
/// bad signal is to do something milder, the trip needs its condition surely, and the unknown has a
/// latch of its own. The first trip of a quiet group is its first-out, ties by written order; what is in
/// no group makes up the unit's own.
/// </summary>
internal sealed class Trips
{
    private readonly UnitScan _scan;
    private readonly Dictionary<string, (Trip Trip, DeclaredState State, Expression Cause, Expression Now, Expression BadNow)> _trips = new(StringComparer.Ordinal);

    public Trips(UnitScan scan)
    {
        _scan = scan;
        foreach (Trip trip in scan.Unit.Trips)
        {
            DeclaredState state = scan.System.State(_scan.Own($"{trip.Name}.latched"), false, retained: true, StatePurpose.Control, new Origin(trip.Span));
            _trips[trip.Name] = (trip, state, scan.Build.False, scan.Build.False, scan.Build.False);
        }
    }

    /// <summary>Causes, latches and the first-out, once every unit's states are declared: a cause may name another unit.</summary>
    public void Lower()
    {
        foreach (Trip trip in _scan.Unit.Trips)
        {
            Lower(trip);
        }

        FirstOut(null);
        foreach (ProtectionGroup group in _scan.Unit.Groups)
        {
            FirstOut(group.Name);
        }
    }

    public Expression AtStart(string trip) => _trips[trip].State.Current;

    /// <summary>The trip is latched behind this scan's inputs and resets.</summary>
    public Expression Tripped(Trip trip) => _trips[trip.Name].Now;

    /// <summary>The cause of some trip is possibly there.</summary>
    public Expression AnyCause => _scan.Build.Or(_trips.Values.Select(entry => entry.Cause));

    /// <summary>A latched trip, or the hold for its bad signal, asks for this reaction.</summary>
    public Expression Ask(Reaction reaction)
    {
        IEnumerable<Expression> trips = _trips.Values.Where(entry => entry.Trip.Reaction == reaction).Select(entry => entry.Now);
        IEnumerable<Expression> bad = reaction == Reaction.Hold ? _trips.Values.Select(entry => entry.BadNow) : [];
        return _scan.Build.Or(trips.Concat(bad));
    }

    private void Lower(Trip trip)
    {
        ExpressionBuilder build = _scan.Build;
        Origin origin = new(trip.Span);
        Truth cause = ConditionLowering.Lower(_scan, trip.Condition, new ConditionPlace(_scan.Own(trip.Name)));
        Expression inForce = build.And(build.Not(_scan.Overrides.Now(trip.Name)), _scan.Site.Forces.Of(_scan.Own(trip.Name)));
        cause = new Truth(build.And(cause.Surely, inForce), build.And(cause.Possibly, inForce));
        Expression trips = trip.IfBad == BadSignal.Trip ? cause.Possibly : cause.Surely;
        DeclaredState state = _trips[trip.Name].State;
        Expression now = _scan.System.Define(_scan.Own($"{trip.Name}.tripped"), Latched(trip, state, trips, cause.Possibly), origin);
        state.Next = now;
        _scan.System.Alarm(_scan.Own(trip.Name), trip.Title, now, origin);
        Expression unknown = build.And(cause.Possibly, build.Not(cause.Surely));
        Expression bad = build.False;
        if (trip.IfBad == BadSignal.Hold && !unknown.IsFalse)
        {
            DeclaredState badState = _scan.System.State(_scan.Own($"{trip.Name}.bad.latched"), false, retained: true, StatePurpose.Control, origin);
            bad = Latched(trip, badState, unknown, cause.Possibly);
            badState.Next = bad;
        }

        if (trip.IfBad != BadSignal.Trip)
        {
            Expression told = trip.IfBad == BadSignal.Hold ? bad : unknown;
            _scan.System.Alarm(_scan.Own($"{trip.Name}.bad"), $"{trip.Title}: signal not usable", told, origin);
        }

        _trips[trip.Name] = (trip, state, cause.Possibly, now, bad);
    }

    private Expression Latched(Trip trip, DeclaredState state, Expression set, Expression cause)
    {
        ExpressionBuilder build = _scan.Build;
        Expression released = build.And(_scan.Commands.ResetOf(trip.Group), build.Not(cause));
        return build.Or(set, build.And(state.Current, build.Not(released)));
    }

    private void FirstOut(string? group)
    {
        ExpressionBuilder build = _scan.Build;
        Expression[] trips = [.. _scan.Unit.Trips.Where(trip => trip.Group == group).Select(trip => _trips[trip.Name].Now)];
        if (trips.Length == 0)
        {
            return;
        }

        string name = _scan.Named(group is null ? "first_out" : $"{group}.first_out");
        DeclaredState first = _scan.System.State(
            name, new IntegerRange(0, trips.Length), 0, retained: true, StatePurpose.Control, new Origin(_scan.Unit.Span));
        Expression choice = build.Constant(0);
        for (int number = trips.Length; number >= 1; number--)
        {
            choice = build.IfThenElse(trips[number - 1], build.Constant(number), choice);
        }

        Expression quiet = build.Equal(first.Current, build.Constant(0));
        Expression gone = build.Not(build.Or(trips));
        first.Next = _scan.System.Define(
            $"{name}.now", build.IfThenElse(build.Or(quiet, gone), choice, first.Current), first.Origin);
    }
}
