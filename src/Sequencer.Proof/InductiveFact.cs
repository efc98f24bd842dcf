using Sequencer.Control.TransitionSystems;
using Sequencer.Proof.Satisfiability;

namespace Sequencer.Proof;

/// <summary>A fact about the states before a scan and behind it, and with what it was shown to be kept.</summary>
internal sealed class InductiveFact(Expression meaning, Literal before, Literal after)
{
    private Literal[]? _shownBy;

    public Expression Meaning { get; } = meaning;

    public Literal Before { get; } = before;

    public Literal After { get; } = after;

    public bool IsShown => _shownBy is not null;

    public void ShowBy(Literal[] literals) => _shownBy = literals;

    /// <summary>Is open again where something that it was shown with is not left.</summary>
    public void ForgetUnless(HashSet<Literal> left) => _shownBy = _shownBy is { } used && Array.TrueForAll(used, left.Contains) ? used : null;
}
