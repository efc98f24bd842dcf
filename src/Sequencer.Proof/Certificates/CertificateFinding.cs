using System.Collections.Immutable;
using Sequencer.Control.TransitionSystems;

namespace Sequencer.Proof.Certificates;

/// <summary>
/// What the check of a certificate's text found. Accepted means: the text says exactly what the system
/// and its requirement say, so a solver's three answers are about them. It does not mean that the
/// answers are unsat: only a solver tells.
/// </summary>
/// <param name="Reason">Why the certificate is refused; empty if it is accepted.</param>
/// <param name="LeanedOn">The assumptions under which it speaks, in the system's order.</param>
/// <param name="Invariant">The invariant as read, in expressions of its own; null if refused.</param>
public sealed record CertificateFinding(string Reason, ImmutableArray<Assumption> LeanedOn, Expression? Invariant)
{
    public bool IsAccepted => Reason.Length == 0;

    internal static CertificateFinding Refused(string reason) => new(reason, [], null);
}
