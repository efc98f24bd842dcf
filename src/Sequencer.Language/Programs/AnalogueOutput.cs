using Sequencer.Language.Units;
using Sequencer.Text;

namespace Sequencer.Language.Programs;

/// <summary>
/// A set value that the unit writes, in whole multiples of <see cref="Resolution"/> (base units of the
/// dimension) from <see cref="Minimum"/> to <see cref="Maximum"/>. Without a demand, and blocked, it has
/// <see cref="Safe"/>. Demanded it moves by at most <see cref="MostAScan"/> steps a scan; null is any.
/// </summary>
public sealed record AnalogueOutput(
    string Tag,
    string Description,
    Unit Unit,
    Rational Resolution,
    long Minimum,
    long Maximum,
    DirectAddress Address,
    long Safe,
    long Emergency,
    long? MostAScan,
    SourceSpan Span);
