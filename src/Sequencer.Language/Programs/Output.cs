using System.Collections.Immutable;
using Sequencer.Text;

namespace Sequencer.Language.Programs;

/// <summary>
/// A device that the unit drives; true is open or running. Without a demand it has
/// <see cref="Safe"/>, under an emergency <see cref="Emergency"/>, while Held <see cref="Held"/>
/// (where declared). Steps of the sections in <see cref="DrivenWhile"/> may drive it too.
/// <see cref="DeEnergised"/> is the position without power.
/// </summary>
public sealed record Output(
    string Tag,
    string Description,
    OutputKind Kind,
    DirectAddress Address,
    RestValue Safe,
    RestValue Emergency,
    RestValue? Held,
    ImmutableArray<ProceduralState> DrivenWhile,
    bool DeEnergised,
    Confirmation? Confirmation,
    Delivery? Delivery,
    SourceSpan Span);
