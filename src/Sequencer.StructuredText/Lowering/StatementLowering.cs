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
    private readonly LoweringContext _context;
    private readonly ExpressionBuilder _builder;
    private readonly ExpressionLowering _expressions;
    private readonly CallLowering _calls;
    private readonly LoopLowering _loops;
    private readonly Reach _reach;

    public StatementLowering(LoweringContext context, InstanceBuilder instances)
    {
        _context = context;
        _builder = context.Builder;
        _expressions = new ExpressionLowering(context) { UserFunction = (call, unit, point) => _calls!.Function(call, unit, point) };
        _calls = new CallLowering(context, instances, _expressions, Run);
        _loops = new LoopLowering(context, _expressions, _calls, Run);
        _reach = new Reach(context, _expressions);
    }

    /// <summary>One scan of what is read.</summary>
    public void RunProgram(BlockInstance program, UnitSyntax unit, ScanPoint point) => _calls.RunBody(program, unit, point);

    private void Run(ImmutableArray<StatementSyntax> statements, ScanPoint point)
    {
        Way way = new(_builder, point);
        for (int index = 0; index < statements.Length && _context.Spend(statements[index].Span); index++)
        {
            StatementSyntax statement = statements[index];
            One(statement, way.Point);
            if (statement is AssignmentSyntax or CallStatementSyntax || way.Continues())
            {
                continue;
            }

            if (index + 1 < statements.Length && statement is JumpSyntax jump)
            {
                _reach.ReviewBehind(jump, statements[index + 1]);
            }

            break;
        }

        way.Close();
    }

    private void One(StatementSyntax statement, ScanPoint point)
    {
        switch (statement)
        {
            case AssignmentSyntax assignment:
                Assign(assignment, point);
                break;
            case CallStatementSyntax call:
                _calls.Call(call, point);
                break;
            case IfSyntax choice:
                _reach.Review(choice, point.Frame);
                If(choice, point);
                break;
            case CaseSyntax choice:
                _reach.Review(choice, point.Frame);
                Case(choice, point);
                break;
            case ForSyntax loop:
                _loops.For(loop, point);
                break;
            case WhileSyntax loop:
                _loops.While(loop, point);
                break;
            case RepeatSyntax loop:
                _loops.Repeat(loop, point);
                break;
            case JumpSyntax jump when point.Jumps.Of(jump.Kind) is { } done:
                point.Store.Set(done, _builder.True);
                break;
            default:
                throw new System.Diagnostics.UnreachableException(statement.GetType().Name);
        }
    }

    private void Assign(AssignmentSyntax assignment, ScanPoint point)
    {
        if (_calls.Target(assignment.Target, point) is not { Type: { } type } place)
        {
            _expressions.Lower(assignment.Value, point);
            return;
        }

        if (_expressions.Values(assignment.Value, type, point) is { } values)
        {
            Slot[] slots = [.. place.Any.Leaves()];
            place.Write(_builder, point.Store, [.. values.Select((value, part) => value ?? point.Store.Get(slots[part]) ?? _builder.Anything(slots[part].Type))]);
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
}
