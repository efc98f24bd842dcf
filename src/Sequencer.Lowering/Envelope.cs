using Sequencer.Control.TransitionSystems;
using Sequencer.Text;

namespace Sequencer.Lowering;

/// <summary>Bounds on rates: the least value so far plus what the rate has allowed since.</summary>
internal static class Envelope
{
    /// <summary>The value keeps to the rate, but for a tolerance.</summary>
    /// <param name="system">Where the envelope is kept.</param>
    /// <param name="name">Of what it bounds.</param>
    /// <param name="value">What rises; what falls is given with its sign changed.</param>
    /// <param name="ignored">Scans in which the value says nothing.</param>
    /// <param name="allowed">What the rate allows in a scan, from this one to the next.</param>
    /// <param name="tolerance">How far the value may be beyond.</param>
    /// <param name="purpose">Who needs it.</param>
    /// <param name="origin">Where it is written.</param>
    public static Expression Holds(
        SystemBuilder system, string name, Expression value, Expression ignored, Expression allowed, long tolerance, StatePurpose purpose, Origin origin)
    {
        ExpressionBuilder build = system.Expressions;
        IntegerRange range = value.Range;
        DeclaredState envelope = system.State($"{name}.envelope", range, range.Maximum, retained: false, purpose, origin);
        Expression least = build.IfThenElse(ignored, envelope.Current, build.Minimum(value, envelope.Current));
        envelope.Next = build.Minimum(build.Add(least, allowed), build.Constant(range.Maximum));
        return build.Or(ignored, build.LessOrEqual(value, build.Add(envelope.Current, build.Constant(tolerance))));
    }
}
