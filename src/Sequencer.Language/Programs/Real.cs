using System.Collections.Immutable;
using Sequencer.Text;

namespace Sequencer.Language.Programs;

/// <summary>
/// What is truly so in the plant, in steps of the resolution of the reading that shows it to within <see cref="Within"/> steps
/// while its channel is good. No controller knows it: it is there for requirements about the plant itself.
/// </summary>
public sealed record Real(
    string Name,
    string Description,
    AnalogueInput Input,
    long Minimum,
    long Maximum,
    long Within,
    ImmutableArray<RealRate> Rates,
    SourceSpan Span);
