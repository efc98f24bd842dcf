using Sequencer.Language.Units;
using Sequencer.Text;

namespace Sequencer.Language.Programs;

/// <summary>
/// What a batch may change, in whole multiples of <see cref="Resolution"/>. Copied when a batch starts;
/// a setting out of range refuses the start.
/// </summary>
public sealed record Parameter(
    string Name,
    string Description,
    Unit Unit,
    Rational Resolution,
    long Default,
    long Minimum,
    long Maximum,
    SourceSpan Span);
