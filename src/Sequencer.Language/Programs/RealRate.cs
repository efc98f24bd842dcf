using Sequencer.Language.Units;
using Sequencer.Text;

namespace Sequencer.Language.Programs;

/// <summary>
/// The real amount rises (or falls) no faster than <see cref="PerSecond"/>, in base units a second, and only while
/// <see cref="While"/> possibly holds, where that is written.
/// </summary>
public sealed record RealRate(bool Rises, Rational PerSecond, Condition? While, SourceSpan Span);
