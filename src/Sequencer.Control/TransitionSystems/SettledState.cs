namespace Sequencer.Control.TransitionSystems;

/// <summary>A state that is always the same as its twin, or, where it has none, a constant.</summary>
public sealed record SettledState(Variable Variable, Variable? Twin, long Constant)
{
    public Expression Meaning(ExpressionBuilder build) =>
        Twin is not null ? build.Variable(Twin) : Variable.Sort == Sort.Boolean ? build.Constant(Constant == 1) : build.Constant(Constant);

    /// <summary>That it is what it is.</summary>
    public Expression Fact(ExpressionBuilder build) => build.Equal(build.Variable(Variable), Meaning(build));
}
