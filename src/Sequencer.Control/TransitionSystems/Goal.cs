using System.Collections.Immutable;
using Sequencer.Text;

namespace Sequencer.Control.TransitionSystems;

/// <summary>
/// What some run must be able to bring about, or it is there in vain: a step at work, a transition taken. <see cref="Reached"/>
/// is over a scan's inputs and the state before it. A way to it leads over one of the goals <see cref="After"/>; without any it
/// is sought from the start. <see cref="Meanwhile"/>, over the state alone, is what is best kept on the last stretch; it decides nothing.
/// </summary>
public sealed record Goal(
    string Name,
    string Unit,
    string Words,
    Expression Reached,
    ImmutableArray<string> After,
    Expression Meanwhile,
    Origin Origin);
