using Sequencer.Text;

namespace Sequencer.Control.TransitionSystems;

/// <summary>
/// A named fact of one scan, from its inputs and the state before it (a condition, a blocked output,
/// a cleared transition): what traces, records and certificates show beside the variables.
/// </summary>
public sealed record Definition(string Name, Expression Value, Origin Origin);
