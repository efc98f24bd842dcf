namespace Sequencer.Proof.Reaching;

/// <summary>What is otherwise once a goal has been reached, against where it was looked for from.</summary>
internal sealed record Change(int Goal, Place Before, Place After)
{
    /// <summary>Whether it changed a state that matters, to a value other than the one there.</summary>
    public bool Brings(IEnumerable<int> matter, Place there) =>
        matter.Any(state => After.States[state] != Before.States[state] && After.States[state] != there.States[state]);
}
