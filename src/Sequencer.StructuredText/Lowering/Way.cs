using Sequencer.Control.TransitionSystems;

namespace Sequencer.StructuredText.Lowering;

/// <summary>
/// A way through statements that may be left early: what is still to come runs under the condition that it was not left, inside what came
/// before. <see cref="Close"/> merges all of it, from the inside.
/// </summary>
internal sealed class Way
{
    private readonly ExpressionBuilder _builder;
    private readonly Stack<(Expression Condition, ScanPoint Outer)> _narrowed = new();

    public Way(ExpressionBuilder builder, ScanPoint start)
    {
        _builder = builder;
        Point = start;
    }

    /// <summary>Where the next statement stands.</summary>
    public ScanPoint Point { get; private set; }

    /// <summary>From here on only where the condition is true.</summary>
    public void Narrow(Expression condition)
    {
        if (!condition.IsTrue)
        {
            _narrowed.Push((condition, Point));
            Point = Point.Under(condition);
        }
    }

    /// <summary>From here on only where nothing has left; false where something always has.</summary>
    public bool Continues()
    {
        Expression left = Point.Jumps.Left(_builder, Point.Store);
        if (left.IsTrue)
        {
            return false;
        }

        if (!left.IsFalse)
        {
            Narrow(_builder.Not(left));
            Point.Jumps.Clear(_builder, Point.Store);
        }

        return true;
    }

    public void Close()
    {
        while (_narrowed.TryPop(out (Expression Condition, ScanPoint Outer) last))
        {
            last.Outer.Store.Merge(_builder, [(last.Condition, Point.Store)], last.Outer.Store.Branch());
            Point = last.Outer;
        }
    }
}
