using Sequencer.Control.TransitionSystems;

namespace Sequencer.Proof.Certificates;

/// <summary>A named term of a certificate: a <c>define-fun</c> without arguments.</summary>
internal sealed record SmtDefinition(string Name, Sort Sort, SmtTerm Body)
{
    public SmtDefinition Primed() => new($"{Name}'", Sort, Body.Primed());
}
