using System.Collections.Immutable;
using Sequencer.Control.TransitionSystems;

namespace Sequencer.Simulation.Traces;

/// <summary>
/// The definitions that a node of the graph says: those of the same expression, and, since conjunctions and disjunctions
/// are flattened into the ones around them, those whose operands are all among the node's.
/// </summary>
internal sealed class NamedParts
{
    private readonly ILookup<Expression, Definition> _same;
    private readonly ILookup<Expression, Definition> _byFirstOperand;

    public NamedParts(ImmutableArray<Definition> definitions)
    {
        _same = definitions.Where(definition => !definition.Value.IsConstant).ToLookup(definition => definition.Value);
        _byFirstOperand = definitions
            .Where(definition => definition.Value.Kind is ExpressionKind.And or ExpressionKind.Or)
            .ToLookup(definition => definition.Value.Operands[0]);
    }

    public IEnumerable<Definition> Of(Expression node)
    {
        IEnumerable<Definition> parts = node.Kind is ExpressionKind.And or ExpressionKind.Or
            ? node.Operands.SelectMany(operand => _byFirstOperand[operand]).Where(part => part.Value != node && IsIn(part.Value, node))
            : [];
        return _same[node].Concat(parts);
    }

    private static bool IsIn(Expression part, Expression node) => part.Kind == node.Kind && part.Operands.All(node.Operands.Contains);
}
