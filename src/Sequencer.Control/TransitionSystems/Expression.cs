using System.Collections.Immutable;

namespace Sequencer.Control.TransitionSystems;

/// <summary>
/// A node of a shared expression graph, made only by an <see cref="ExpressionBuilder"/>: equal
/// expressions of one builder are the same object. <see cref="Id"/> grows from operand to user, so
/// walking nodes in the order of their ids visits operands first; no walk needs recursion
/// (<see cref="ExpressionGraph"/>).
/// </summary>
public sealed class Expression
{
    internal Expression(
        int id,
        ExpressionKind kind,
        Sort sort,
        IntegerRange range,
        long value,
        Variable? variable,
        ImmutableArray<Expression> operands)
    {
        Id = id;
        Kind = kind;
        Sort = sort;
        Range = range;
        Value = value;
        Variable = variable;
        Operands = operands;
    }

    public int Id { get; }

    public ExpressionKind Kind { get; }

    public Sort Sort { get; }

    /// <summary>Every value lies in here, by interval arithmetic from the variables' ranges.</summary>
    public IntegerRange Range { get; }

    /// <summary>The value of a constant, the factor of a scaled integer, else 0.</summary>
    public long Value { get; }

    /// <summary>The variable of a variable expression, else null.</summary>
    public Variable? Variable { get; }

    public ImmutableArray<Expression> Operands { get; }

    public bool IsConstant => Kind == ExpressionKind.Constant;

    public bool IsTrue => Kind == ExpressionKind.Constant && Sort == Sort.Boolean && Value == 1;

    public bool IsFalse => Kind == ExpressionKind.Constant && Sort == Sort.Boolean && Value == 0;

    public override string ToString() => ExpressionText.Write(this);
}
