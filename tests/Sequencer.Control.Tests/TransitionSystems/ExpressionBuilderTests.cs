using CsCheck;
using Sequencer.Control.Tests.Execution;
using Sequencer.Control.TransitionSystems;
using Sequencer.Testing;

namespace Sequencer.Control.Tests.TransitionSystems;

public sealed class ExpressionBuilderTests
{
    [Fact]
    public void Simplifying_a_Boolean_keeps_its_value_and_its_range() =>
        Gen.Select(RawTerms.Booleans(4), RawTerms.Values).SampleRepeatably(Agrees, iterations: 20_000);

    [Fact]
    public void Simplifying_an_integer_keeps_its_value_and_its_range() =>
        Gen.Select(RawTerms.Integers(4), RawTerms.Values).SampleRepeatably(Agrees, iterations: 20_000);

    [Fact]
    public void Substituting_a_variable_means_evaluating_it_first() =>
        Gen.Select(RawTerms.Booleans(3), RawTerms.Integers(2), RawTerms.Values).SampleRepeatably(
            (term, replacement, values) =>
            {
                ExpressionBuilder builder = new();
                Variable x = RawTerms.Variables[3];
                Dictionary<Variable, Expression> map = new() { [x] = builder.Minimum(builder.Maximum(replacement.Build(builder), builder.Constant(-2)), builder.Constant(3)) };
                Expression substituted = builder.Substitute([term.Build(builder)], map)[0];
                long image = Math.Clamp(replacement.Evaluate(values), -2, 3);
                Dictionary<string, long> changed = new(values) { ["x"] = image };
                return new ReferenceEvaluator(values).Value(substituted) == term.Evaluate(changed);
            },
            iterations: 10_000);

    [Fact]
    public void The_same_term_built_twice_is_one_object() =>
        RawTerms.Booleans(4).SampleRepeatably(
            term =>
            {
                ExpressionBuilder builder = new();
                return ReferenceEquals(term.Build(builder), term.Build(builder));
            },
            iterations: 3_000);

    [Fact]
    public void Ids_grow_from_operand_to_user() =>
        RawTerms.Booleans(5).SampleRepeatably(
            term => ExpressionGraph.InOrder([term.Build(new ExpressionBuilder())])
                .All(expression => expression.Operands.All(operand => operand.Id < expression.Id)),
            iterations: 3_000);

    [Fact]
    public void Operands_of_the_wrong_sort_are_refused()
    {
        ExpressionBuilder builder = new();
        Assert.Throws<ArgumentException>(() => builder.And(builder.True, builder.Constant(1L)));
        Assert.Throws<ArgumentException>(() => builder.Less(builder.True, builder.Constant(1L)));
        Assert.Throws<ArgumentException>(() => builder.IfThenElse(builder.True, builder.True, builder.Constant(1L)));
    }

    [Fact]
    public void A_chain_200_000_deep_is_walked_without_recursion()
    {
        ExpressionBuilder builder = new();
        Expression chain = builder.Variable(RawTerms.Variables[0]);
        for (int depth = 0; depth < 200_000; depth++)
        {
            chain = builder.Not(builder.IfThenElse(builder.Variable(RawTerms.Variables[1 + (depth % 2)]), chain, builder.Variable(RawTerms.Variables[0])));
        }

        Assert.True(ExpressionGraph.InOrder([chain]).Length > 200_000);
    }

    private static bool Agrees(RawTerm term, Dictionary<string, long> values) =>
        new ReferenceEvaluator(values).Value(term.Build(new ExpressionBuilder())) == term.Evaluate(values);
}
