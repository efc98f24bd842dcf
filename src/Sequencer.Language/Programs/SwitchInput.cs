using Sequencer.Language.Units;
using Sequencer.Text;

namespace Sequencer.Language.Programs;

/// <summary>
/// A yes-or-no fact. Its name is the physical fact; <see cref="NormallyClosed"/> says that the contact
/// is open when the fact is true, so that a broken wire reads as the fact. The fact counts after it has
/// been so for <see cref="OnDelay"/>, and its end after <see cref="OffDelay"/>.
/// </summary>
public sealed record SwitchInput(
    string Tag,
    string Description,
    bool NormallyClosed,
    DirectAddress Address,
    Duration OnDelay,
    Duration OffDelay,
    SourceSpan Span);
