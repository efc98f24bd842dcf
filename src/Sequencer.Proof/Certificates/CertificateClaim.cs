using System.Collections.Immutable;
using Sequencer.Control.TransitionSystems;

namespace Sequencer.Proof.Certificates;

/// <summary>What one scan is asked for: a part of the invariant behind it, or a part of the requirement in it.</summary>
/// <param name="Stepped">The states whose values behind the scan it reads.</param>
/// <param name="Shared">Terms about the state behind the scan that it uses more than once.</param>
/// <param name="After">The part of the invariant behind the scan; null for a part of the requirement.</param>
/// <param name="Now">The part of the requirement; null for a part of the invariant.</param>
internal sealed record CertificateClaim(ImmutableArray<Variable> Stepped, ImmutableArray<SmtDefinition> Shared, SmtTerm? After, Expression? Now)
{
    public static CertificateClaim Of(InvariantPart part) =>
        part.Given is { } given
            ? new([given, .. part.Reads], Primed(part), SmtTerm.Apply("=", SmtTerm.Name(given.Name), part.Whole.Body).Primed(), null)
            : new(part.Reads, Primed(part), part.Whole.Body.Primed(), null);

    private static ImmutableArray<SmtDefinition> Primed(InvariantPart part) => [.. part.Shared.Select(static shared => shared.Primed())];
}
