using Sequencer.Control.TransitionSystems;
using Sequencer.Text;

namespace Sequencer.Lowering;

/// <summary>Counters of scans, the only clocks there are.</summary>
internal static class Clocks
{
    /// <summary>
    /// True when the fact holds now and held in the <paramref name="scans"/> scans before. The clock
    /// counts only while <paramref name="gate"/>, and from nothing where <paramref name="anew"/>; both are
    /// asked for when the whole scan is known.
    /// </summary>
    public static Expression Lasting(
        SystemBuilder system,
        string name,
        Expression fact,
        long scans,
        Func<Expression> gate,
        Func<Expression> anew,
        StatePurpose purpose,
        Origin origin)
    {
        ExpressionBuilder build = system.Expressions;
        if (scans == 0 || fact.IsFalse)
        {
            return fact;
        }

        DeclaredState clock = system.State(name, new IntegerRange(0, scans), 0, retained: false, purpose, origin);
        system.Later(() =>
        {
            Expression counted = build.IfThenElse(anew(), build.Constant(0), clock.Current);
            clock.Next = build.IfThenElse(build.And(fact, gate()), UpTo(build, counted, scans), build.Constant(0));
        });
        return build.And(fact, build.LessOrEqual(build.Constant(scans), clock.Current));
    }

    /// <summary>As above, of a fact that no step owns.</summary>
    public static Expression Lasting(SystemBuilder system, string name, Expression fact, long scans, StatePurpose purpose, Origin origin) =>
        Lasting(system, name, fact, scans, () => system.Expressions.True, () => system.Expressions.False, purpose, origin);

    /// <summary>True while the fact holds and in the <paramref name="scans"/> scans after its end; a power-up begins without.</summary>
    public static Expression Lingering(SystemBuilder system, string name, Expression fact, long scans, StatePurpose purpose, Origin origin)
    {
        ExpressionBuilder build = system.Expressions;
        if (scans == 0 || fact.IsFalse)
        {
            return fact;
        }

        DeclaredState clock = system.State(name, new IntegerRange(0, scans), scans, retained: false, purpose, origin);
        clock.Next = build.IfThenElse(fact, build.Constant(0), UpTo(build, clock.Current, scans));
        return build.Or(fact, build.Less(clock.Current, build.Constant(scans)));
    }

    /// <summary>One more, but no more than the limit.</summary>
    public static Expression UpTo(ExpressionBuilder build, Expression count, long limit) =>
        build.Minimum(build.Add(count, build.Constant(1)), build.Constant(limit));
}
