using Sequencer.Control.TransitionSystems;
using Sequencer.Proof.Certificates;

namespace Sequencer.Proof.Tests.Certificates;

/// <summary>A system with one requirement, an invariant that proves it and one that does not.</summary>
internal sealed record CertifiedCase(TransitionSystem System, Expression Invariant, Expression WrongInvariant)
{
    public Requirement Requirement => System.Requirements[0];

    public string Certificate => CertificateWriter.Write(System, Requirement, Invariant);

    public string WrongCertificate => CertificateWriter.Write(System, Requirement, WrongInvariant);

    public override string ToString() => System.Name;
}
