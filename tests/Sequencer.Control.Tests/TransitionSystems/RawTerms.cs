using System.Collections.Immutable;
using CsCheck;
using Sequencer.Control.TransitionSystems;

namespace Sequencer.Control.Tests.TransitionSystems;

/// <summary>Generators of raw terms over three Booleans and three integers of small, overlapping ranges.</summary>
internal static class RawTerms
{
    public static readonly ImmutableArray<Variable> Variables =
    [
        new("a", VariableRole.Input, 0, Sort.Boolean, IntegerRange.Boolean),
        new("b", VariableRole.Input, 1, Sort.Boolean, IntegerRange.Boolean),
        new("c", VariableRole.Input, 2, Sort.Boolean, IntegerRange.Boolean),
        new("x", VariableRole.Input, 3, Sort.Integer, new IntegerRange(-2, 3)),
        new("y", VariableRole.Input, 4, Sort.Integer, new IntegerRange(0, 4)),
        new("z", VariableRole.Input, 5, Sort.Integer, new IntegerRange(3, 5)),
    ];

    public static Gen<RawTerm> Booleans(int depth)
    {
        Gen<RawTerm> leaf = Gen.Int[0, 2].Select(index => new RawTerm(ExpressionKind.Variable, 0, Variables[index]));
        if (depth == 0)
        {
            return leaf;
        }

        Gen<RawTerm> boolean = Booleans(depth - 1);
        Gen<RawTerm> integer = Integers(depth - 1);
        return Gen.OneOf(
            leaf,
            boolean.Select(term => Node(ExpressionKind.Not, term)),
            boolean.Array[2, 4].Select(terms => Node(ExpressionKind.And, terms)),
            boolean.Array[2, 4].Select(terms => Node(ExpressionKind.Or, terms)),
            Gen.Select(boolean, boolean, (left, right) => Node(ExpressionKind.Equal, left, right)),
            Gen.Select(integer, integer, (left, right) => Node(ExpressionKind.Equal, left, right)),
            Gen.Select(integer, integer, (left, right) => Node(ExpressionKind.Less, left, right)),
            Gen.Select(integer, integer, (left, right) => Node(ExpressionKind.LessOrEqual, left, right)),
            Gen.Select(boolean, boolean, boolean, (test, then, other) => Node(ExpressionKind.IfThenElse, test, then, other)));
    }

    public static Gen<RawTerm> Integers(int depth)
    {
        Gen<RawTerm> leaf = Gen.OneOf(
            Gen.Int[3, 5].Select(index => new RawTerm(ExpressionKind.Variable, 0, Variables[index])),
            Gen.Int[-3, 6].Select(value => new RawTerm(ExpressionKind.Constant, value, null)));
        if (depth == 0)
        {
            return leaf;
        }

        Gen<RawTerm> integer = Integers(depth - 1);
        return Gen.OneOf(
            leaf,
            integer.Array[2, 3].Select(terms => Node(ExpressionKind.Add, terms)),
            Gen.Select(Gen.Int[-3, 3], integer, (factor, term) => new RawTerm(ExpressionKind.Scale, factor, null, term)),
            Gen.Select(Booleans(depth - 1), integer, integer, (test, then, other) => Node(ExpressionKind.IfThenElse, test, then, other)),
            Gen.Select(integer, integer, (left, right) => Node(ExpressionKind.IfThenElse, Node(ExpressionKind.Less, left, right), left, right)),
            Gen.Select(integer, integer, (left, right) => Node(ExpressionKind.IfThenElse, Node(ExpressionKind.LessOrEqual, right, left), left, right)));
    }

    /// <summary>Values for all variables, drawn from their ranges.</summary>
    public static readonly Gen<Dictionary<string, long>> Values =
        Gen.Select(Gen.Int[0, 1], Gen.Int[0, 1], Gen.Int[0, 1], Gen.Int[-2, 3], Gen.Int[0, 4], Gen.Int[3, 5], (a, b, c, x, y, z) =>
            new Dictionary<string, long> { ["a"] = a, ["b"] = b, ["c"] = c, ["x"] = x, ["y"] = y, ["z"] = z });

    private static RawTerm Node(ExpressionKind kind, params RawTerm[] operands) => new(kind, 0, null, operands);
}
