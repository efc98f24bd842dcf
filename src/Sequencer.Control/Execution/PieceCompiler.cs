using System.Collections.Immutable;
using System.Diagnostics;
using Sequencer.Control.TransitionSystems;
using Expression = Sequencer.Control.TransitionSystems.Expression;
using Tree = System.Linq.Expressions.Expression;
using TreeVariable = System.Linq.Expressions.ParameterExpression;

namespace Sequencer.Control.Execution;

/// <summary>
/// Compiles one piece of a scan. A Boolean is a bool inside the code and 0 or 1 in the arrays. A value
/// used once is written out where it is used, so that a choice computes only the branch it takes.
/// </summary>
internal sealed class PieceCompiler
{
    /// <summary>Written-out values nest no deeper than this: the tree compiler is recursive.</summary>
    private const int DeepestTree = 40;

    private static readonly TreeVariable Inputs = Tree.Parameter(typeof(long[]), "inputs");
    private static readonly TreeVariable States = Tree.Parameter(typeof(long[]), "states");
    private static readonly TreeVariable NextStates = Tree.Parameter(typeof(long[]), "nextStates");
    private static readonly TreeVariable Outputs = Tree.Parameter(typeof(long[]), "outputs");
    private static readonly TreeVariable Observed = Tree.Parameter(typeof(long[]), "observed");
    private static readonly TreeVariable Carried = Tree.Parameter(typeof(long[]), "carried");

    private readonly int _number;
    private readonly ValueUses _uses;
    private readonly Dictionary<Expression, (Tree Tree, int Depth)> _values = [];
    private readonly List<TreeVariable> _locals = [];
    private readonly List<Tree> _statements = [];

    /// <summary>The highest place used in each array: read first, it spares all other checks of bounds.</summary>
    private readonly Dictionary<TreeVariable, int> _highest = [];

    private PieceCompiler(int number, ValueUses uses)
    {
        _number = number;
        _uses = uses;
    }

    public static ScanCode Compile(ImmutableArray<Expression> piece, int number, ValueUses uses)
    {
        PieceCompiler compiler = new(number, uses);
        foreach (Expression expression in piece)
        {
            compiler.Add(expression);
        }

        IEnumerable<Tree> touched = compiler._highest.Select(static pair => Tree.ArrayIndex(pair.Key, Tree.Constant(pair.Value)));
        Tree body = Tree.Block(typeof(void), compiler._locals, [.. touched, .. compiler._statements, Tree.Empty()]);
        return Tree.Lambda<ScanCode>(body, Inputs, States, NextStates, Outputs, Observed, Carried).Compile();
    }

    private void Add(Expression expression)
    {
        Tree tree = Translate(expression);
        int depth = 1 + expression.Operands.Select(operand => _values[operand].Depth).DefaultIfEmpty(0).Max();
        int? carriedPlace = _uses.CarriedPlace(expression);
        bool stays = expression.IsConstant || (_uses.Count(expression) <= 1 && carriedPlace is null && depth < DeepestTree);
        if (!stays)
        {
            TreeVariable local = Tree.Variable(tree.Type);
            _locals.Add(local);
            _statements.Add(Tree.Assign(local, tree));
            (tree, depth) = (local, 0);
        }

        _values[expression] = (tree, depth);
        foreach (ScanTarget target in _uses.Targets[expression])
        {
            Store(tree, ArrayOf(target.Array), target.Index);
        }

        if (carriedPlace is int place)
        {
            Store(tree, Carried, place);
        }
    }

    private static TreeVariable ArrayOf(TargetArray array) => array switch
    {
        TargetArray.Outputs => Outputs,
        TargetArray.Observed => Observed,
        TargetArray.NextStates => NextStates,
        _ => throw new UnreachableException($"no array {array}"),
    };

    private void Store(Tree value, TreeVariable array, int index)
    {
        Tree stored = value.Type == typeof(bool) ? Tree.Condition(value, Tree.Constant(1L), Tree.Constant(0L)) : value;
        _statements.Add(Tree.Assign(Tree.ArrayAccess(array, Place(array, index)), stored));
    }

    private System.Linq.Expressions.ConstantExpression Place(TreeVariable array, int index)
    {
        _highest[array] = Math.Max(index, _highest.GetValueOrDefault(array));
        return Tree.Constant(index);
    }

    private Tree Load(TreeVariable array, int index, Sort sort)
    {
        Tree element = Tree.ArrayIndex(array, Place(array, index));
        return sort == Sort.Boolean ? Tree.NotEqual(element, Tree.Constant(0L)) : element;
    }

    /// <summary>The operand as known in this piece; one from an earlier piece is loaded anew.</summary>
    private Tree Operand(Expression operand)
    {
        if (!_values.TryGetValue(operand, out (Tree Tree, int Depth) value))
        {
            value = (operand.Operands.Length == 0 ? Translate(operand) : LoadCarried(operand), 1);
            _values[operand] = value;
        }

        return value.Tree;
    }

    private Tree LoadCarried(Expression operand)
    {
        int place = _uses.CarriedPlace(operand)
            ?? throw new UnreachableException($"piece {_number} uses a value of piece {_uses.PieceOf(operand)} that is not carried");
        return Load(Carried, place, operand.Sort);
    }

    private Tree Translate(Expression expression)
    {
        Tree[] operands = [.. expression.Operands.Select(Operand)];
        return expression.Kind switch
        {
            ExpressionKind.Constant when expression.Sort == Sort.Boolean => Tree.Constant(expression.Value == 1),
            ExpressionKind.Constant => Tree.Constant(expression.Value),
            ExpressionKind.Variable => LoadVariable(expression),
            ExpressionKind.Not => Tree.Not(operands[0]),
            ExpressionKind.And => Balanced(operands, Tree.AndAlso),
            ExpressionKind.Or => Balanced(operands, Tree.OrElse),
            ExpressionKind.Equal => Tree.Equal(operands[0], operands[1]),
            ExpressionKind.Less => Tree.LessThan(operands[0], operands[1]),
            ExpressionKind.LessOrEqual => Tree.LessThanOrEqual(operands[0], operands[1]),
            ExpressionKind.Add => Balanced(operands, Tree.Add),
            ExpressionKind.Scale => Tree.Multiply(operands[0], Tree.Constant(expression.Value)),
            ExpressionKind.IfThenElse => Tree.Condition(operands[0], operands[1], operands[2]),
            _ => throw new UnreachableException($"no code for {expression.Kind}"),
        };
    }

    private Tree LoadVariable(Expression expression)
    {
        Variable variable = expression.Variable ?? throw new UnreachableException("a variable expression without its variable");
        return Load(variable.Role == VariableRole.Input ? Inputs : States, variable.Index, variable.Sort);
    }

    /// <summary>A tree of two-operand nodes no deeper than the logarithm of the number of operands.</summary>
    private static Tree Balanced(Tree[] operands, Func<Tree, Tree, Tree> combine)
    {
        while (operands.Length > 1)
        {
            operands = [.. operands.Chunk(2).Select(pair => pair.Length == 2 ? combine(pair[0], pair[1]) : pair[0])];
        }

        return operands[0];
    }
}
