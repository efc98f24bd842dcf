namespace Sequencer.Control.TransitionSystems;

/// <summary>
/// The kinds of expression. Integer arithmetic is linear on purpose (a product has a constant
/// factor): every certificate stays in linear integer arithmetic.
/// </summary>
public enum ExpressionKind
{
    /// <summary>A Boolean (0 or 1) or integer literal.</summary>
    Constant,

    /// <summary>An input or a state variable.</summary>
    Variable,

    /// <summary>Negation of one Boolean.</summary>
    Not,

    /// <summary>Conjunction of two or more Booleans.</summary>
    And,

    /// <summary>Disjunction of two or more Booleans.</summary>
    Or,

    /// <summary>Equality of two expressions of one sort.</summary>
    Equal,

    /// <summary>Strictly less, of two integers.</summary>
    Less,

    /// <summary>Less or equal, of two integers.</summary>
    LessOrEqual,

    /// <summary>Sum of two or more integers.</summary>
    Add,

    /// <summary>An integer multiplied by the constant in <see cref="Expression.Value"/>.</summary>
    Scale,

    /// <summary>Choice: Boolean, then, else; the latter two of one sort, which is the result's.</summary>
    IfThenElse,
}
