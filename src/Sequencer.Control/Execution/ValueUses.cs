using System.Collections.Immutable;
using Sequencer.Control.TransitionSystems;

namespace Sequencer.Control.Execution;

/// <summary>
/// How often and where each value of a scan is used: once in its own piece (then it is written out in
/// place), more often (then it is a local), or in another piece (then it is carried there).
/// </summary>
internal sealed class ValueUses
{
    private readonly Dictionary<Expression, int> _count = [];
    private readonly Dictionary<Expression, int> _pieceOf = [];
    private readonly Dictionary<Expression, int> _carriedPlace = [];

    public ValueUses(ImmutableArray<ImmutableArray<Expression>> pieces, ILookup<Expression, ScanTarget> targets)
    {
        Targets = targets;
        for (int number = 0; number < pieces.Length; number++)
        {
            foreach (Expression expression in pieces[number])
            {
                _pieceOf[expression] = number;
                _count[expression] = targets[expression].Count();
                foreach (Expression operand in expression.Operands)
                {
                    _count[operand]++;
                    if (_pieceOf[operand] != number && operand.Operands.Length > 0)
                    {
                        _carriedPlace.TryAdd(operand, _carriedPlace.Count);
                    }
                }
            }
        }
    }

    public ILookup<Expression, ScanTarget> Targets { get; }

    public int Carried => _carriedPlace.Count;

    public int Count(Expression expression) => _count[expression];

    public int PieceOf(Expression expression) => _pieceOf[expression];

    /// <summary>The place among the carried values, null if no other piece uses this one.</summary>
    public int? CarriedPlace(Expression expression) =>
        _carriedPlace.TryGetValue(expression, out int place) ? place : null;
}
