using Sequencer.Language.Units;
using Sequencer.Text;

namespace Sequencer.Language.Programs;

/// <summary>
/// A measured quantity. The controller sees whole multiples of <see cref="Resolution"/> (base units
/// of the dimension) from <see cref="Minimum"/> to <see cref="Maximum"/>.
/// <see cref="BadAfter"/> is the filter time after which a faulty channel makes it unusable;
/// <see cref="UsableWhile"/> must surely hold for it to mean anything.
/// </summary>
public sealed record AnalogueInput(
    string Tag,
    string Description,
    Unit Unit,
    Rational Resolution,
    long Minimum,
    long Maximum,
    DirectAddress Address,
    Duration BadAfter,
    Condition? UsableWhile,
    SourceSpan Span);
