using System.Collections.Immutable;
using System.Globalization;
using Sequencer.Control.TransitionSystems;
using Sequencer.Proof.BitBlasting;

namespace Sequencer.Proof.Certificates;

/// <summary>One part of an invariant as a certificate that asks part by part says it.</summary>
/// <param name="Given">The state whose value the part gives by other states; null where the part is a fact.</param>
/// <param name="Shared">Terms that the part uses more than once.</param>
/// <param name="Whole">The state's value under the state's name, or the fact under a name of its own.</param>
/// <param name="Reads">The states that the part reads, the given one not among them.</param>
internal sealed record InvariantPart(Variable? Given, ImmutableArray<SmtDefinition> Shared, SmtDefinition Whole, ImmutableArray<Variable> Reads)
{
    /// <summary>The parts of an invariant, those first that give a state; each reads only given states that come before it.</summary>
    public static ImmutableArray<InvariantPart> Of(Expression invariant)
    {
        Expression[] conjuncts = invariant.Kind == ExpressionKind.And ? [.. invariant.Operands] : [invariant];
        DefinedStates defined = new(conjuncts);
        (Variable? Given, Expression Value)[] parts =
        [
            .. defined.InOrder.Select(given => ((Variable?)given.State, given.Value)),
            .. conjuncts.Where(fact => !defined.Used.Contains(fact)).Select(fact => ((Variable?)null, fact)),
        ];
        return [.. parts.Select((part, index) => Of(part.Given, part.Value, index + 1))];
    }

    public static string FactName(int number) => CertificateNames.Fact + number.ToString(CultureInfo.InvariantCulture);

    public static string SharedPrefix(int number) => FormattableString.Invariant($"{CertificateNames.InvariantPart}{number}.");

    private static InvariantPart Of(Variable? given, Expression value, int number)
    {
        SmtTranslation translation = new([value], SharedPrefix(number), new Dictionary<Expression, string>());
        SmtDefinition whole = new(given?.Name ?? FactName(number), value.Sort, translation.Term(value));
        return new InvariantPart(given, translation.Definitions, whole, [.. ExpressionGraph.Variables([value]).OrderBy(state => state.Index)]);
    }
}
