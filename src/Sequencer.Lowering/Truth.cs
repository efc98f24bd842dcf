using Sequencer.Control.TransitionSystems;

namespace Sequencer.Lowering;

/// <summary>
/// A three-valued condition of this scan (strong Kleene logic) as two Booleans: surely so, and possibly
/// so. Surely implies possibly; where both are one expression the condition is never unknown.
/// </summary>
internal readonly record struct Truth(Expression Surely, Expression Possibly)
{
    public static Truth Known(Expression fact) => new(fact, fact);

    public static Truth Not(ExpressionBuilder expressions, Truth truth) =>
        new(expressions.Not(truth.Possibly), expressions.Not(truth.Surely));

    public static Truth All(ExpressionBuilder expressions, IReadOnlyList<Truth> truths) =>
        new(expressions.And(truths.Select(truth => truth.Surely)), expressions.And(truths.Select(truth => truth.Possibly)));

    public static Truth Any(ExpressionBuilder expressions, IReadOnlyList<Truth> truths) =>
        new(expressions.Or(truths.Select(truth => truth.Surely)), expressions.Or(truths.Select(truth => truth.Possibly)));

    /// <summary>The comparison where everything it reads is usable; unknown where not.</summary>
    public static Truth Measured(ExpressionBuilder expressions, Expression usable, Expression fact) =>
        new(expressions.And(usable, fact), expressions.Or(expressions.Not(usable), fact));
}
