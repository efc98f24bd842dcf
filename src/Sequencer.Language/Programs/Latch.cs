using Sequencer.Text;

namespace Sequencer.Language.Programs;

/// <summary>
/// A remembered fact: set when <see cref="Set"/> surely holds, cleared when <see cref="Clear"/>
/// possibly holds (clearing wins). Kept through a loss of power if <see cref="Retained"/>.
/// </summary>
public sealed record Latch(string Name, string Description, Condition Set, Condition Clear, bool Retained, SourceSpan Span);
