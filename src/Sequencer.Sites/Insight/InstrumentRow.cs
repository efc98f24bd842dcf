using System.Collections.Immutable;
using Sequencer.Language.Programs;

namespace Sequencer.Sites.Insight;

/// <summary>An instrument that matters in a step.</summary>
/// <param name="Step">The step.</param>
/// <param name="Tag">The instrument.</param>
/// <param name="CanBeBad">It is a reading, which may be found not usable.</param>
/// <param name="Bad">What is so while it is not usable; null where it cannot be asked.</param>
/// <param name="Leaves">The unit does not let the step go on then.</param>
/// <param name="Waits">Ways out of the step that look at it.</param>
/// <param name="Acts">What the step does by it.</param>
internal sealed record InstrumentRow(
    Step Step, string Tag, bool CanBeBad, Situation? Bad, bool Leaves, ImmutableArray<string> Waits, ImmutableArray<string> Acts);
