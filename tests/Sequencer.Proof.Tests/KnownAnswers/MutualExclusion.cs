using Sequencer.Control.TransitionSystems;
using Sequencer.Testing;

namespace Sequencer.Proof.Tests.KnownAnswers;

/// <summary>Two textbook protocols, one process moving a scan (Peterson) or each on its own clock (Fischer).</summary>
internal static class MutualExclusion
{
    private const int Idle = 0;
    private const int Waiting = 2;
    private const int Critical = 3;

    /// <summary>
    /// Peterson's algorithm for two processes (from memory of the 1981 paper): raise the flag, give the
    /// other the turn, wait while the other's flag is up and it has the turn. The broken form gives no turn.
    /// </summary>
    public static TransitionSystem Peterson(bool broken)
    {
        Sketch sketch = new();
        Expression who = sketch.Input("who");
        Expression turn = sketch.State("turn");
        Expression[] places = [sketch.State("place0", 0, 3, Idle), sketch.State("place1", 0, 3, Idle)];
        Expression nextTurn = turn;
        for (int self = 0; self < 2; self++)
        {
            Expression moves = self == 0 ? sketch.Not(who) : who;
            Expression place = places[self];
            Expression otherFlag = sketch.Not(sketch.Is(places[1 - self], Idle));
            Expression otherTurn = self == 0 ? turn : sketch.Not(turn);
            Expression enters = sketch.Not(sketch.And(otherFlag, otherTurn));
            Expression gives = sketch.And(moves, sketch.Is(place, 1));
            Expression goesOn = sketch.And(moves, sketch.Or(sketch.Not(sketch.Is(place, Waiting)), enters));
            Expression onward = sketch.Builder.IfThenElse(sketch.Is(place, Critical), sketch.Builder.Constant(0L), sketch.CountedUp(place));
            sketch.Next(place, sketch.Builder.IfThenElse(goesOn, onward, place));
            nextTurn = broken ? nextTurn : sketch.Builder.IfThenElse(gives, sketch.Builder.Constant(self == 0), nextTurn);
        }

        sketch.Next(turn, nextTurn);
        sketch.Never("both critical", sketch.Is(places[0], Critical), sketch.Is(places[1], Critical));
        return sketch.ToSystem();
    }

    /// <summary>
    /// Fischer's protocol in discrete time (Lamport, "A fast mutual exclusion algorithm", 1987, gives it
    /// to Fischer): see the lock free, write one's number within <paramref name="write"/> scans, wait
    /// <paramref name="wait"/> scans, enter if the number is still there. In one scan both processes act,
    /// and a read sees the value before the scan: safe exactly when the wait is at least the write's time.
    /// </summary>
    public static TransitionSystem Fischer(int write, int wait)
    {
        Sketch sketch = new();
        Expression owner = sketch.State("owner", 0, 2, 0);
        Expression[] places = [sketch.State("place0", 0, 3, Idle), sketch.State("place1", 0, 3, Idle)];
        Expression next = owner;
        for (int self = 0; self < 2; self++)
        {
            Expression place = places[self];
            Expression acts = sketch.Input($"acts{self}");
            Expression clock = sketch.State($"clock{self}", 0, Math.Max(write, wait) + 1, 0);
            Expression seesFree = sketch.And(acts, sketch.Is(place, Idle), sketch.Is(owner, 0));
            Expression writes = sketch.And(sketch.Is(place, 1), sketch.Or(acts, sketch.AtLeast(clock, write - 1)));
            Expression looks = sketch.And(acts, sketch.Is(place, Waiting), sketch.AtLeast(clock, wait));
            Expression enters = sketch.And(looks, sketch.Is(owner, self + 1));
            Expression leaves = sketch.And(acts, sketch.Is(place, Critical));
            Expression givesUp = sketch.And(looks, sketch.Not(enters));
            Expression moved = sketch.Or(seesFree, writes, enters, leaves, givesUp);
            Expression onward = sketch.Builder.IfThenElse(sketch.Or(leaves, givesUp), sketch.Builder.Constant(0L), sketch.CountedUp(place));
            sketch.Next(place, sketch.Builder.IfThenElse(moved, onward, place));
            sketch.Clock(clock, sketch.Not(moved));
            next = sketch.Builder.IfThenElse(writes, sketch.Builder.Constant(self + 1L), sketch.Builder.IfThenElse(leaves, sketch.Builder.Constant(0L), next));
        }

        sketch.Next(owner, next);
        sketch.Never("both critical", sketch.Is(places[0], Critical), sketch.Is(places[1], Critical));
        return sketch.ToSystem();
    }
}
