using Sequencer.Text;

namespace Sequencer.Control.TransitionSystems;

/// <summary>
/// A variable carried from scan to scan, its value before the first scan (a constant) and its value
/// after each scan. Loss of power is already in <see cref="Next"/>; <see cref="Retained"/> tells the
/// exported text and the documents that the value survives it.
/// </summary>
public sealed record StateVariable(
    Variable Variable,
    long Initial,
    Expression Next,
    bool Retained,
    StatePurpose Purpose,
    Origin Origin);
