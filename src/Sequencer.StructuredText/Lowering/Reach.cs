using System.Collections.Immutable;
using Sequencer.Control.TransitionSystems;
using Sequencer.StructuredText.Syntax;
using Sequencer.StructuredText.Types;

namespace Sequencer.StructuredText.Lowering;

/// <summary>
/// Finds branches that no run can take because the conditions of one IF or CASE contradict one another. Each variable counts as any value of its
/// type, whatever was assigned before: what a block is given in one call, or a loop in one turn, says nothing of the text.
/// </summary>
internal sealed class Reach
{
    private readonly LoweringContext _context;
    private readonly ExpressionBuilder _builder;
    private readonly ExpressionLowering _expressions;
    private readonly HashSet<StatementSyntax> _reviewed = new(ReferenceEqualityComparer.Instance);
    private readonly Dictionary<Slot, Expression> _anything = [];

    public Reach(LoweringContext context, ExpressionLowering expressions)
    {
        _context = context;
        _builder = context.Builder;
        _expressions = expressions;
    }

    public void Review(IfSyntax choice, BlockInstance frame)
    {
        if (_context.IsQuiet || !_reviewed.Add(choice))
        {
            return;
        }

        RangeFacts rest = new(_builder);
        foreach (IfBranchSyntax branch in choice.Branches)
        {
            if (_context.Quietly(() => _expressions.Condition(branch.Condition, Anywhere(frame, rest))) is not { } condition)
            {
                return;
            }

            Report(branch.Body, rest.Assume(condition).IsImpossible);
            rest = rest.Assume(_builder.Not(condition));
        }

        Report(choice.Otherwise, rest.IsImpossible);
    }

    /// <summary>
    /// An ELSE for a number that should not come is good practice: that it is never reached is not said. Of labels that stand twice something else is.
    /// </summary>
    public void Review(CaseSyntax choice, BlockInstance frame)
    {
        if (_context.IsQuiet || !_reviewed.Add(choice)
            || _context.Quietly(() => _expressions.Lower(choice.Selector, Anywhere(frame, new RangeFacts(_builder)))) is not { Type.Family: TypeFamily.Integer or TypeFamily.Enumeration } selector)
        {
            return;
        }

        foreach (CaseBranchSyntax branch in choice.Branches)
        {
            long?[] bounds = [.. branch.Labels.SelectMany(label => new[] { label.Lower, label.Upper ?? label.Lower })
                .Select(bound => _context.Quietly(() => _expressions.Constant(bound, frame, selector.Type.Base))?.Value.Value)];
            IntegerRange range = selector.Value.Range;
            Report(branch.Body, bounds.Chunk(2).All(label => label is [{ } from, { } to] && (to < range.Minimum || from > range.Maximum)));
        }
    }

    /// <summary>What stands behind a jump, in the same list.</summary>
    public void ReviewBehind(JumpSyntax jump, StatementSyntax next)
    {
        if (!_context.IsQuiet && _reviewed.Add(jump))
        {
            _context.Diagnostics.Add(StructuredTextDiagnostics.UnreachableCode(next.Span));
        }
    }

    private ScanPoint Anywhere(BlockInstance frame, RangeFacts facts) => new(frame, Store.Of(Anything), facts, true, 0);

    private Expression Anything(Slot slot)
    {
        if (!_anything.TryGetValue(slot, out Expression? value))
        {
            Variable variable = new(slot.Name, VariableRole.Input, int.MaxValue - 1 - _anything.Count, slot.Type.Sort, slot.Type.Range);
            value = _builder.Variable(variable);
            _anything.Add(slot, value);
        }

        return value;
    }

    private void Report(ImmutableArray<StatementSyntax> body, bool isUnreached)
    {
        if (isUnreached && !body.IsEmpty)
        {
            _context.Diagnostics.Add(StructuredTextDiagnostics.UnreachableCode(body[0].Span));
        }
    }
}
