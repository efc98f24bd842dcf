using System.Collections.Immutable;
using Sequencer.Control.TransitionSystems;
using Sequencer.StructuredText.Syntax;
using Sequencer.StructuredText.Types;
using Sequencer.Text;

namespace Sequencer.StructuredText.Lowering;

/// <summary>
/// Loops are unrolled, each turn inside the one before: what a turn finds is what the turns before left on the one way that leads there. A WHILE or
/// REPEAT has ended where its condition cannot be true any more.
/// </summary>
internal sealed class LoopLowering
{
    /// <summary>The most turns of one loop.</summary>
    public const int MostTurns = 1000;

    private readonly LoweringContext _context;
    private readonly ExpressionBuilder _builder;
    private readonly ExpressionLowering _expressions;
    private readonly CallLowering _calls;
    private readonly Action<ImmutableArray<StatementSyntax>, ScanPoint> _run;
    private bool _hasEndless;

    public LoopLowering(
        LoweringContext context, ExpressionLowering expressions, CallLowering calls, Action<ImmutableArray<StatementSyntax>, ScanPoint> run)
    {
        _context = context;
        _builder = context.Builder;
        _expressions = expressions;
        _calls = calls;
        _run = run;
    }

    /// <summary>
    /// Bounds and step are taken once, at the beginning. The variable has no value behind the loop, as the standard leaves that to the controller.
    /// </summary>
    public void For(ForSyntax loop, ScanPoint point)
    {
        PathSyntax path = new(loop.Variable, [], loop.Variable.Span);
        if (_calls.Target(path, point)?.Only is not Slot counter)
        {
            return;
        }

        long? from = Bound(loop.From, counter, point);
        long? to = Bound(loop.To, counter, point);
        long? by = loop.By is null ? 1 : Bound(loop.By, counter, point);
        if (from is not { } first || to is not { } last || by is not { } step)
        {
            return;
        }

        if (step == 0 || ((Int128)last - first) / step >= MostTurns)
        {
            _context.Diagnostics.Add(StructuredTextDiagnostics.LoopBounds(
                loop.Span, step == 0 ? "its step is 0" : FormattableString.Invariant($"it has more than {MostTurns} turns")));
            return;
        }

        counter.IsCounting = true;
        Way way = Begin(loop, point);
        for (long value = first; step > 0 ? value <= last : value >= last; value += step)
        {
            way.Point.Store.Set(counter, _builder.Constant(value));
            if (!Turn(loop.Body, way))
            {
                break;
            }
        }

        way.Close();
        counter.IsCounting = false;
        point.Store.Set(counter, null);
    }

    public void While(WhileSyntax loop, ScanPoint point)
    {
        Way way = Begin(loop, point);
        for (int turn = 0; _context.Spend(loop.Condition.Span); turn++)
        {
            Expression? condition = _expressions.Condition(loop.Condition, way.Point);
            if (Never(condition ?? _context.Unread, way.Point) || HasTooManyTurns(turn, loop))
            {
                break;
            }

            way.Narrow(condition ?? _context.Unread);
            if (!Turn(loop.Body, way) || condition is null)
            {
                break;
            }
        }

        way.Close();
    }

    public void Repeat(RepeatSyntax loop, ScanPoint point)
    {
        Way way = Begin(loop, point);
        for (int turn = 0; _context.Spend(loop.Until.Span) && !HasTooManyTurns(turn, loop) && Turn(loop.Body, way); turn++)
        {
            Expression? until = _expressions.Condition(loop.Until, way.Point);
            if (until is null || Never(_builder.Not(until), way.Point))
            {
                break;
            }

            way.Narrow(_builder.Not(until));
        }

        way.Close();
    }

    private Way Begin(StatementSyntax loop, ScanPoint point) =>
        new(_builder, point with { Jumps = point.Jumps.OfLoop(_builder, new Origin(loop.Span)) });

    /// <summary>One turn; false where every way through it leaves the loop.</summary>
    private bool Turn(ImmutableArray<StatementSyntax> body, Way way)
    {
        _run(body, way.Point);
        if (way.Point.Jumps.Continue is { } next)
        {
            way.Point.Store.Set(next, _builder.False);
        }

        return way.Continues();
    }

    private static bool Never(Expression condition, ScanPoint point) => condition.IsFalse || point.Facts.Assume(condition).IsImpossible;

    private bool HasTooManyTurns(int turn, StatementSyntax loop)
    {
        // Where one loop has been told not to end, more turns of others say nothing more.
        if (turn < (_hasEndless ? 1 : MostTurns))
        {
            return false;
        }

        if (_hasEndless)
        {
            return true;
        }

        _hasEndless = true;

        _context.Diagnostics.Add(StructuredTextDiagnostics.LoopBounds(
            loop.Span, FormattableString.Invariant($"it cannot be seen to end within {MostTurns} turns")));
        return true;
    }

    private long? Bound(ExpressionSyntax syntax, Slot counter, ScanPoint point)
    {
        if (counter.Type.Family != TypeFamily.Integer)
        {
            _context.Diagnostics.Add(StructuredTextDiagnostics.WrongType(syntax.Span, "an integer as the loop's variable", counter.Type.Name));
            return null;
        }

        if (_expressions.LowerAs(syntax, counter.Type.Base, point) is not { } bound)
        {
            return null;
        }

        if (!bound.Value.IsConstant)
        {
            _context.Diagnostics.Add(StructuredTextDiagnostics.LoopBounds(syntax.Span, "this bound is not a constant"));
            return null;
        }

        return bound.Value.Value;
    }
}
