using System.Collections.Immutable;

namespace Sequencer.Control.TransitionSystems;

/// <summary>
/// Makes expressions, each only once, in a simple canonical form: constants are folded, nested
/// conjunctions, disjunctions and sums are flattened, operands of commutative kinds are sorted by id
/// and freed of duplicates. Not safe for use by several threads at once.
/// </summary>
public sealed class ExpressionBuilder
{
    private readonly Dictionary<Key, Expression> _known = [];

    public ExpressionBuilder()
    {
        False = Make(ExpressionKind.Constant, Sort.Boolean, new IntegerRange(0, 0), 0, null, []);
        True = Make(ExpressionKind.Constant, Sort.Boolean, new IntegerRange(1, 1), 1, null, []);
    }

    public Expression True { get; }

    public Expression False { get; }

    public int Count => _known.Count;

    public Expression Constant(bool value) => value ? True : False;

    public Expression Constant(long value) =>
        Make(ExpressionKind.Constant, Sort.Integer, new IntegerRange(value, value), value, null, []);

    public Expression Variable(Variable variable) =>
        Make(ExpressionKind.Variable, variable.Sort, variable.Range, 0, variable, []);

    public Expression Not(Expression operand)
    {
        Require(operand, Sort.Boolean);
        if (operand.IsConstant)
        {
            return Constant(operand.Value == 0);
        }

        return operand.Kind switch
        {
            ExpressionKind.Not => operand.Operands[0],
            ExpressionKind.Less => LessOrEqual(operand.Operands[1], operand.Operands[0]),
            ExpressionKind.LessOrEqual => Less(operand.Operands[1], operand.Operands[0]),
            _ => Make(ExpressionKind.Not, Sort.Boolean, IntegerRange.Boolean, 0, null, [operand]),
        };
    }

    public Expression And(params IEnumerable<Expression> operands) => Junction(ExpressionKind.And, operands, False, True);

    public Expression Or(params IEnumerable<Expression> operands) => Junction(ExpressionKind.Or, operands, True, False);

    public Expression Implies(Expression premise, Expression conclusion) => Or(Not(premise), conclusion);

    public Expression Equal(Expression left, Expression right)
    {
        Require(right, left.Sort);
        if (left == right)
        {
            return True;
        }

        if (left.IsConstant && right.IsConstant)
        {
            return Constant(left.Value == right.Value);
        }

        if (left.Sort == Sort.Integer && (left.Range.Maximum < right.Range.Minimum || right.Range.Maximum < left.Range.Minimum))
        {
            return False;
        }

        if (left.Sort == Sort.Boolean && (left.IsConstant || right.IsConstant))
        {
            (Expression constant, Expression other) = left.IsConstant ? (left, right) : (right, left);
            return constant.IsTrue ? other : Not(other);
        }

        return Make(ExpressionKind.Equal, Sort.Boolean, IntegerRange.Boolean, 0, null, left.Id <= right.Id ? [left, right] : [right, left]);
    }

    public Expression Less(Expression left, Expression right)
    {
        Require(left, Sort.Integer);
        Require(right, Sort.Integer);
        if (left.Range.Maximum < right.Range.Minimum)
        {
            return True;
        }

        if (left.Range.Minimum >= right.Range.Maximum || left == right)
        {
            return False;
        }

        return Make(ExpressionKind.Less, Sort.Boolean, IntegerRange.Boolean, 0, null, [left, right]);
    }

    public Expression LessOrEqual(Expression left, Expression right)
    {
        Require(left, Sort.Integer);
        Require(right, Sort.Integer);
        if (left.Range.Maximum <= right.Range.Minimum || left == right)
        {
            return True;
        }

        if (left.Range.Minimum > right.Range.Maximum)
        {
            return False;
        }

        return Make(ExpressionKind.LessOrEqual, Sort.Boolean, IntegerRange.Boolean, 0, null, [left, right]);
    }

    public Expression Greater(Expression left, Expression right) => Less(right, left);

    public Expression GreaterOrEqual(Expression left, Expression right) => LessOrEqual(right, left);

    /// <exception cref="OverflowException">The sum may not fit 64 bits.</exception>
    public Expression Add(params IEnumerable<Expression> operands)
    {
        long constant = 0;
        List<Expression> terms = [];
        foreach (Expression operand in operands)
        {
            Require(operand, Sort.Integer);
            ImmutableArray<Expression> parts = operand.Kind == ExpressionKind.Add ? operand.Operands : [operand];
            foreach (Expression part in parts)
            {
                if (part.IsConstant)
                {
                    constant = checked(constant + part.Value);
                }
                else
                {
                    terms.Add(part);
                }
            }
        }

        if (constant != 0 || terms.Count == 0)
        {
            terms.Add(Constant(constant));
        }

        if (terms.Count == 1)
        {
            return terms[0];
        }

        terms.Sort(static (left, right) => left.Id.CompareTo(right.Id));
        IntegerRange range = terms.Select(term => term.Range).Aggregate(static (sum, next) => sum + next);
        return Make(ExpressionKind.Add, Sort.Integer, range, 0, null, [.. terms]);
    }

    /// <exception cref="OverflowException">The difference may not fit 64 bits.</exception>
    public Expression Subtract(Expression left, Expression right) => Add(left, Scale(-1, right));

    /// <exception cref="OverflowException">The product may not fit 64 bits.</exception>
    public Expression Scale(long factor, Expression operand)
    {
        Require(operand, Sort.Integer);
        if (factor == 0)
        {
            return Constant(0);
        }

        if (factor == 1)
        {
            return operand;
        }

        return operand.Kind switch
        {
            ExpressionKind.Constant => Constant(checked(factor * operand.Value)),
            ExpressionKind.Scale => Scale(checked(factor * operand.Value), operand.Operands[0]),
            ExpressionKind.Add => Add(operand.Operands.Select(term => Scale(factor, term))),
            _ => Make(ExpressionKind.Scale, Sort.Integer, factor * operand.Range, factor, null, [operand]),
        };
    }

    public Expression IfThenElse(Expression condition, Expression then, Expression otherwise)
    {
        Require(condition, Sort.Boolean);
        Require(otherwise, then.Sort);
        if (condition.IsConstant || then == otherwise)
        {
            return condition.IsFalse ? otherwise : then;
        }

        if (condition.Kind == ExpressionKind.Not)
        {
            return IfThenElse(condition.Operands[0], otherwise, then);
        }

        if (then.Sort == Sort.Boolean)
        {
            if (then.IsConstant)
            {
                return then.IsTrue ? Or(condition, otherwise) : And(Not(condition), otherwise);
            }

            if (otherwise.IsConstant)
            {
                return otherwise.IsTrue ? Or(Not(condition), then) : And(condition, then);
            }
        }

        return Make(ExpressionKind.IfThenElse, then.Sort, ChoiceRange(condition, then, otherwise), 0, null, [condition, then, otherwise]);
    }

    public Expression Minimum(Expression left, Expression right) => IfThenElse(LessOrEqual(left, right), left, right);

    public Expression Maximum(Expression left, Expression right) => IfThenElse(LessOrEqual(left, right), right, left);

    /// <summary>The root with each variable replaced as the map says; others stay.</summary>
    public IReadOnlyList<Expression> Substitute(IReadOnlyList<Expression> roots, IReadOnlyDictionary<Variable, Expression> replacement)
    {
        Dictionary<Expression, Expression> images = [];
        foreach (Expression expression in ExpressionGraph.InOrder(roots))
        {
            images[expression] = Rebuild(expression, operand => images[operand], replacement);
        }

        return [.. roots.Select(root => images[root])];
    }

    /// <summary>
    /// The union of both branches, narrowed where the condition compares a branch with something: the
    /// lesser of a and b is no more than either, so that counters which stop at a limit keep its range.
    /// </summary>
    private static IntegerRange ChoiceRange(Expression condition, Expression then, Expression otherwise)
    {
        IntegerRange whenTrue = then.Range;
        IntegerRange whenFalse = otherwise.Range;
        if (condition.Kind is ExpressionKind.LessOrEqual or ExpressionKind.Less)
        {
            Expression small = condition.Operands[0];
            Expression large = condition.Operands[1];
            whenTrue = then == small ? AtMost(whenTrue, large.Range.Maximum) : then == large ? AtLeast(whenTrue, small.Range.Minimum) : whenTrue;
            whenFalse = otherwise == large ? AtMost(whenFalse, small.Range.Maximum) : otherwise == small ? AtLeast(whenFalse, large.Range.Minimum) : whenFalse;
        }

        return whenTrue.Union(whenFalse);
    }

    private static IntegerRange AtMost(IntegerRange range, long limit) =>
        new(range.Minimum, Math.Max(range.Minimum, Math.Min(range.Maximum, limit)));

    private static IntegerRange AtLeast(IntegerRange range, long limit) =>
        new(Math.Min(range.Maximum, Math.Max(range.Minimum, limit)), range.Maximum);

    private Expression Rebuild(Expression expression, Func<Expression, Expression> image, IReadOnlyDictionary<Variable, Expression> replacement)
    {
        switch (expression.Kind)
        {
            case ExpressionKind.Constant:
                return expression.Sort == Sort.Boolean ? Constant(expression.Value == 1) : Constant(expression.Value);
            case ExpressionKind.Variable:
                return replacement.TryGetValue(expression.Variable!, out Expression? replaced) ? replaced : Variable(expression.Variable!);
            case ExpressionKind.Not:
                return Not(image(expression.Operands[0]));
            case ExpressionKind.And:
                return And(expression.Operands.Select(image));
            case ExpressionKind.Or:
                return Or(expression.Operands.Select(image));
            case ExpressionKind.Equal:
                return Equal(image(expression.Operands[0]), image(expression.Operands[1]));
            case ExpressionKind.Less:
                return Less(image(expression.Operands[0]), image(expression.Operands[1]));
            case ExpressionKind.LessOrEqual:
                return LessOrEqual(image(expression.Operands[0]), image(expression.Operands[1]));
            case ExpressionKind.Add:
                return Add(expression.Operands.Select(image));
            case ExpressionKind.Scale:
                return Scale(expression.Value, image(expression.Operands[0]));
            case ExpressionKind.IfThenElse:
                return IfThenElse(image(expression.Operands[0]), image(expression.Operands[1]), image(expression.Operands[2]));
            default:
                throw new System.Diagnostics.UnreachableException($"no rebuilding of {expression.Kind}");
        }
    }

    private Expression Junction(ExpressionKind kind, IEnumerable<Expression> operands, Expression absorbing, Expression neutral)
    {
        SortedSet<Expression> parts = new(ById.Instance);
        foreach (Expression operand in operands)
        {
            Require(operand, Sort.Boolean);
            if (operand == absorbing)
            {
                return absorbing;
            }

            if (operand == neutral)
            {
                continue;
            }

            if (operand.Kind == kind)
            {
                parts.UnionWith(operand.Operands);
            }
            else
            {
                parts.Add(operand);
            }
        }

        if (parts.Any(part => part.Kind == ExpressionKind.Not && parts.Contains(part.Operands[0])))
        {
            return absorbing;
        }

        return parts.Count switch
        {
            0 => neutral,
            1 => parts.Min!,
            _ => Make(kind, Sort.Boolean, IntegerRange.Boolean, 0, null, [.. parts]),
        };
    }

    private Expression Make(ExpressionKind kind, Sort sort, IntegerRange range, long value, Variable? variable, ImmutableArray<Expression> operands)
    {
        Key key = new(kind, sort, value, variable, operands);
        if (!_known.TryGetValue(key, out Expression? expression))
        {
            expression = new Expression(_known.Count, kind, sort, range, value, variable, operands);
            _known.Add(key, expression);
        }

        return expression;
    }

    private static void Require(Expression expression, Sort sort)
    {
        if (expression.Sort != sort)
        {
            throw new ArgumentException($"{sort} expression expected, found {expression}", nameof(expression));
        }
    }

    private sealed class ById : IComparer<Expression>
    {
        public static readonly ById Instance = new();

        public int Compare(Expression? x, Expression? y) => x!.Id.CompareTo(y!.Id);
    }

    private readonly struct Key(ExpressionKind kind, Sort sort, long value, Variable? variable, ImmutableArray<Expression> operands) : IEquatable<Key>
    {
        private readonly ExpressionKind _kind = kind;
        private readonly Sort _sort = sort;
        private readonly long _value = value;
        private readonly Variable? _variable = variable;
        private readonly ImmutableArray<Expression> _operands = operands;

        public bool Equals(Key other) =>
            _kind == other._kind && _sort == other._sort && _value == other._value
            && ReferenceEquals(_variable, other._variable) && _operands.AsSpan().SequenceEqual(other._operands.AsSpan());

        public override bool Equals(object? obj) => obj is Key other && Equals(other);

        public override int GetHashCode()
        {
            HashCode hash = default;
            hash.Add(_kind);
            hash.Add(_sort);
            hash.Add(_value);
            hash.Add(_variable?.Name);
            foreach (Expression operand in _operands)
            {
                hash.Add(operand.Id);
            }

            return hash.ToHashCode();
        }
    }
}
