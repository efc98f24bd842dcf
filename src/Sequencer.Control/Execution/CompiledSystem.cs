using System.Collections.Immutable;
using Sequencer.Control.TransitionSystems;

namespace Sequencer.Control.Execution;

/// <summary>
/// A system's scan as machine code. Compiling takes some 50 microseconds an expression, which pays
/// for itself after about 50 000 scans: a short command is quicker with the <see cref="Interpreter"/>.
/// </summary>
public sealed class CompiledSystem
{
    /// <summary>
    /// Operations in one piece of code. Past some thousand locals or blocks the just-in-time compiler
    /// gives up optimising a method, so a large system is cut into pieces that hand values on.
    /// </summary>
    private const int OperationsInPiece = 400;

    private CompiledSystem(TransitionSystem system, ImmutableArray<Expression> observed, ImmutableArray<ScanCode> pieces, int carried)
    {
        System = system;
        Observed = observed;
        Pieces = pieces;
        Carried = carried;
    }

    public TransitionSystem System { get; }

    public ImmutableArray<Expression> Observed { get; }

    internal ImmutableArray<ScanCode> Pieces { get; }

    /// <summary>How many values one piece hands on to later ones.</summary>
    internal int Carried { get; }

    public static CompiledSystem Compile(TransitionSystem system, ImmutableArray<Expression> observed)
    {
        ImmutableArray<ImmutableArray<Expression>> pieces = Cut(ExpressionGraph.InOrder(ScanRoots.Of(system, observed)));
        ValueUses uses = new(pieces, ScanTargets.Of(system, observed));
        ImmutableArray<ScanCode> code = [.. pieces.Select((piece, number) => PieceCompiler.Compile(piece, number, uses))];
        return new CompiledSystem(system, observed, code, uses.Carried);
    }

    /// <summary>Pieces of roughly equal size, in the order of execution.</summary>
    private static ImmutableArray<ImmutableArray<Expression>> Cut(Expression[] ordered)
    {
        List<ImmutableArray<Expression>> pieces = [];
        ImmutableArray<Expression>.Builder piece = ImmutableArray.CreateBuilder<Expression>();
        int operations = 0;
        foreach (Expression expression in ordered)
        {
            piece.Add(expression);
            operations += Math.Max(1, expression.Operands.Length - 1);
            if (operations >= OperationsInPiece)
            {
                pieces.Add(piece.ToImmutable());
                piece.Clear();
                operations = 0;
            }
        }

        pieces.Add(piece.ToImmutable());
        return [.. pieces];
    }
}
