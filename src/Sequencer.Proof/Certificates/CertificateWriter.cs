using System.Collections.Immutable;
using Sequencer.Control.TransitionSystems;

namespace Sequencer.Proof.Certificates;

/// <summary>
/// Writes the certificate of a verdict: SMT-LIB 2.6, linear integer arithmetic, whose three answers
/// must be <c>unsat</c> (spec/certificates.md). The same arguments give the same bytes.
/// </summary>
public static class CertificateWriter
{
    /// <summary>A certificate that leans on all of the system's assumptions.</summary>
    public static string Write(TransitionSystem system, Requirement requirement, Expression invariant) =>
        Write(system, requirement, invariant, system.Assumptions);

    /// <param name="system">What the verdict is about.</param>
    /// <param name="requirement">One of the system's requirements.</param>
    /// <param name="invariant">A Boolean over the system's states. Ranges of integer states are added to it.</param>
    /// <param name="leanedOn">Those of the system's assumptions that the proof needs.</param>
    /// <exception cref="ArgumentException">The invariant is no Boolean over states of the system.</exception>
    public static string Write(
        TransitionSystem system,
        Requirement requirement,
        Expression invariant,
        ImmutableArray<Assumption> leanedOn)
    {
        Demand(system, invariant);
        CertifiedSystem certified = CertifiedSystem.Of(system, requirement);
        Expression own = certified.Invariant(invariant);
        SmtTranslation translation = new([own], CertificateNames.InvariantPart, new Dictionary<Expression, string>());
        SmtDefinition found = new(CertificateNames.Found, Sort.Boolean, translation.Term(own));
        return new CertificateText(certified, certified.Assumptions(leanedOn), translation.Definitions.Add(found), ExpressionGraph.Variables([own])).ToString();
    }

    /// <summary>
    /// A certificate that asks part by part and leans on no assumption: for an invariant of many parts, each of which a solver decides
    /// sooner by itself. The parts are those of a conjunction.
    /// </summary>
    /// <inheritdoc cref="Write(TransitionSystem, Requirement, Expression, ImmutableArray{Assumption})"/>
    public static string WriteByParts(TransitionSystem system, Requirement requirement, Expression invariant)
    {
        Demand(system, invariant);
        return new PartwiseText(system, requirement, InvariantPart.Of(invariant)).ToString();
    }

    private static void Demand(TransitionSystem system, Expression invariant)
    {
        IReadOnlyList<Variable> variables = ExpressionGraph.Variables([invariant]);
        bool known = variables.All(variable => variable.Role == VariableRole.State
            && variable.Index < system.States.Length
            && system.States[variable.Index].Variable == variable);
        if (invariant.Sort != Sort.Boolean || !known)
        {
            throw new ArgumentException("an invariant is a Boolean over states of the system", nameof(invariant));
        }
    }
}
