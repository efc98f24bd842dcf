using System.Collections.Immutable;
using Sequencer.Control.TransitionSystems;
using Sequencer.StructuredText.Syntax;
using Sequencer.StructuredText.Types;

namespace Sequencer.StructuredText.Lowering;

/// <summary>
/// Runs statements over expressions instead of numbers: every way through IF and CASE is taken, under its
/// condition, and what the ways wrote is merged behind them.
/// </summary>
internal sealed class StatementLowering
{
    /// <summary>The most turns of one FOR.</summary>
    public const int MostTurns = 1000;

    private readonly LoweringContext _context;
    private readonly ExpressionBuilder _builder;
    private readonly ExpressionLowering _expressions;
    private readonly CallLowering _calls;

    public StatementLowering(LoweringContext context, InstanceBuilder instances)
    {
        _context = context;
        _builder = context.Builder;
        _expressions = new ExpressionLowering(context) { UserFunction = (call, unit, point) => _calls!.Function(call, unit, point) };
        _calls = new CallLowering(context, instances, _expressions, Run);
    }

    /// <summary>One scan of what is read.</summary>
    public void RunProgram(BlockInstance program, UnitSyntax unit, ScanPoint point) => _calls.RunBody(program, unit, point);

    private void Run(ImmutableArray<StatementSyntax> statements, ScanPoint point)
    {
        foreach (StatementSyntax statement in statements)
        {
            if (!_context.Spend(statement.Span))
            {
                return;
            }

            switch (statement)
            {
                case AssignmentSyntax assignment:
                    Assign(assignment, point);
                    break;
                case CallStatementSyntax call:
                    _calls.Block(call, point);
                    break;
                case IfSyntax choice:
                    If(choice, point);
                    break;
                case CaseSyntax choice:
                    Case(choice, point);
                    break;
                case ForSyntax loop:
                    For(loop, point);
                    break;
                default:
                    throw new System.Diagnostics.UnreachableException(statement.GetType().Name);
            }
        }
    }

    private void Assign(AssignmentSyntax assignment, ScanPoint point)
    {
        if (_calls.Target(assignment.Target, point.Frame) is { } slot)
        {
            Expression? value = _expressions.LowerAs(assignment.Value, slot.Type, point)?.Value;
            point.Store.Set(slot, value ?? point.Store.Get(slot) ?? _builder.Anything(slot.Type));
        }
        else
        {
            _expressions.Lower(assignment.Value, point);
        }
    }

    private void If(IfSyntax choice, ScanPoint point)
    {
        List<(Expression Condition, Store Store)> branches = [];
        ScanPoint rest = point;
        foreach (IfBranchSyntax branch in choice.Branches)
        {
            Expression condition = _expressions.Condition(branch.Condition, rest) ?? _context.Unread;
            rest = Branch(condition, branch.Body, rest, branches);
        }

        Otherwise(choice.Otherwise, rest, branches, point);
    }

    private void Case(CaseSyntax choice, ScanPoint point)
    {
        TypedExpression? selector = _expressions.Lower(choice.Selector, point);
        if (selector is { Type.Family: not (TypeFamily.Integer or TypeFamily.Enumeration) } wrong)
        {
            _context.Diagnostics.Add(StructuredTextDiagnostics.WrongType(choice.Selector.Span, "an integer or an enumeration", wrong.Type.Name));
            selector = null;
        }

        List<IntegerRange> taken = [];
        List<(Expression Condition, Store Store)> branches = [];
        ScanPoint rest = point;
        foreach (CaseBranchSyntax branch in choice.Branches)
        {
            Expression condition = selector is { } known
                ? _builder.Or(branch.Labels.Select(label => Matches(label, known, taken, point)).ToList())
                : _context.Unread;
            rest = Branch(condition, branch.Body, rest, branches);
        }

        Otherwise(choice.Otherwise, rest, branches, point);
    }

    /// <summary>Runs a branch under its condition; answers where the next one starts.</summary>
    private ScanPoint Branch(
        Expression condition, ImmutableArray<StatementSyntax> body, ScanPoint rest, List<(Expression Condition, Store Store)> branches)
    {
        ScanPoint inside = rest.Under(condition);
        Run(body, inside);
        branches.Add((condition, inside.Store));
        return rest with { Facts = rest.Facts.Assume(_builder.Not(condition)), IsConditional = rest.IsConditional || !condition.IsFalse };
    }

    private void Otherwise(
        ImmutableArray<StatementSyntax> body, ScanPoint rest, List<(Expression Condition, Store Store)> branches, ScanPoint point)
    {
        ScanPoint otherwise = rest with { Store = point.Store.Branch() };
        Run(body, otherwise);
        point.Store.Merge(_builder, branches, otherwise.Store);
    }

    private Expression Matches(CaseLabelSyntax label, TypedExpression selector, List<IntegerRange> taken, ScanPoint point)
    {
        DataType type = selector.Type.Base;
        long? lower = _expressions.Constant(label.Lower, point.Frame, type)?.Value.Value;
        long? upper = label.Upper is null ? lower : _expressions.Constant(label.Upper, point.Frame, type)?.Value.Value;
        if (lower is not { } from || upper is not { } to)
        {
            return _context.Unread;
        }

        if (from > to)
        {
            _context.Diagnostics.Add(StructuredTextDiagnostics.WrongType(label.Span, "a range with its lower bound first", "an empty one"));
            return _builder.False;
        }

        IntegerRange range = new(from, to);
        if (taken.Any(earlier => earlier.Contains(range)))
        {
            _context.Diagnostics.Add(StructuredTextDiagnostics.LabelRepeated(label.Span));
        }

        taken.Add(range);
        return from == to
            ? _builder.Equal(selector.Value, _builder.Constant(from))
            : _builder.And(
                _builder.LessOrEqual(_builder.Constant(from), selector.Value),
                _builder.LessOrEqual(selector.Value, _builder.Constant(to)));
    }

    /// <summary>
    /// Bounds and step are taken once, at the beginning; the loop is unrolled. Its variable has no value behind
    /// it, as the standard leaves that to the controller.
    /// </summary>
    private void For(ForSyntax loop, ScanPoint point)
    {
        PathSyntax path = new([loop.Variable], loop.Variable.Span);
        if (_calls.Target(path, point.Frame) is not { } counter)
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

        if (step == 0 || (last - first) / step >= MostTurns)
        {
            _context.Diagnostics.Add(StructuredTextDiagnostics.LoopBounds(
                loop.Span, step == 0 ? "its step is 0" : FormattableString.Invariant($"it has more than {MostTurns} turns")));
            return;
        }

        counter.IsCounting = true;
        for (long value = first; step > 0 ? value <= last : value >= last; value += step)
        {
            point.Store.Set(counter, _builder.Constant(value));
            Run(loop.Body, point);
        }

        counter.IsCounting = false;
        point.Store.Set(counter, null);
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
