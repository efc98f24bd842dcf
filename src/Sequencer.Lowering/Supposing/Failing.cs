using Sequencer.Control.TransitionSystems;
using Sequencer.Text;

namespace Sequencer.Lowering.Supposing;

/// <summary>The failure that is supposed, if any: since when it lasts, and what it shows.</summary>
internal sealed class Failing
{
    private readonly SiteScan _site;
    private Expression? _now;
    private Expression? _before;

    public Failing(SiteScan site) => _site = site;

    /// <summary>Whether the tag's failure is of the modes asked.</summary>
    public bool Is(string tag, params ReadOnlySpan<FailureMode> modes) =>
        _site.Supposed.Failure is { } failure && failure.Tag == tag && modes.Contains(failure.Mode);

    /// <summary>What a failing switch or device is for good; null where the tag does not fail so.</summary>
    public bool? Position(string tag) => _site.Supposed.Failure is { } failure && failure.Tag == tag
        ? failure.Mode switch
        {
            FailureMode.StuckOn or FailureMode.StaysOn => true,
            FailureMode.StuckOff or FailureMode.StaysOff => false,
            _ => null,
        }
        : null;

    /// <summary>The fact as it is while nothing has failed, and the position afterwards.</summary>
    public Expression Instead(bool position, Expression healthy, Origin origin) =>
        _site.System.Expressions.IfThenElse(Now(origin), _site.System.Expressions.Constant(position), healthy);

    /// <summary>The same of the last scan.</summary>
    public Expression InsteadBefore(bool position, Expression healthy, Origin origin)
    {
        Now(origin);
        return _site.System.Expressions.IfThenElse(_before!, _site.System.Expressions.Constant(position), healthy);
    }

    /// <summary>What the failing reading shows: its own value, and from the failure on the one that it sticks at.</summary>
    public (Expression Value, Expression Fault) Instead(string tag, IntegerRange range, Expression value, Expression fault, Origin origin)
    {
        ExpressionBuilder build = _site.System.Expressions;
        Expression now = Now(origin);
        Expression stuck = _site.Supposed.Failure!.Mode switch
        {
            FailureMode.StuckLow => build.Constant(range.Minimum),
            FailureMode.StuckHigh => build.Constant(range.Maximum),
            FailureMode.Frozen => Kept(tag, range, value, origin),
            FailureMode.Stuck => Kept(tag, range, _site.System.Input($"{tag}.sticks_at", range), origin),
            _ => throw new System.Diagnostics.UnreachableException("a reading does not fail like a switch"),
        };
        return (build.IfThenElse(now, stuck, value), build.And(fault, build.Not(now)));
    }

    /// <summary>What is so beside a failing reading: the reading until then, and afterwards what comes in, which is always good.</summary>
    public (Expression Value, Expression Good) True((Expression Value, Expression Good) reading, Expression value, Origin origin)
    {
        ExpressionBuilder build = _site.System.Expressions;
        Expression now = Now(origin);
        return (build.IfThenElse(now, value, reading.Value), build.Or(now, reading.Good));
    }

    /// <summary>The value in the scan of the failure, and ever after.</summary>
    private Expression Kept(string tag, IntegerRange range, Expression value, Origin origin)
    {
        ExpressionBuilder build = _site.System.Expressions;
        DeclaredState kept = _site.System.State($"{tag}.stuck_at", range, range.Minimum, retained: true, StatePurpose.Monitor, origin);
        Expression stuck = build.IfThenElse(_before!, kept.Current, value);
        kept.Next = stuck;
        return stuck;
    }

    /// <summary>The failure has come about, in this scan or before; no loss of power mends it.</summary>
    private Expression Now(Origin origin)
    {
        if (_now is null)
        {
            ExpressionBuilder build = _site.System.Expressions;
            string tag = _site.Supposed.Failure!.Tag;
            DeclaredState failed = _site.System.State($"{tag}.has_failed", false, retained: true, StatePurpose.Monitor, origin);
            _before = failed.Current;
            _now = build.Or(failed.Current, _site.System.Input($"{tag}.fails"));
            failed.Next = _now;
        }

        return _now;
    }
}
