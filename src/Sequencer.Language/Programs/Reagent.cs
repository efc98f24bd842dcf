using System.Collections.Immutable;
using Sequencer.Text;

namespace Sequencer.Language.Programs;

/// <summary>A chemical: which reading it raises or lowers, and what it must not meet.</summary>
public sealed record Reagent(
    string Name,
    string Description,
    ReagentEffect? Effect,
    AnalogueInput? Signal,
    ImmutableArray<string> Opposes,
    SourceSpan Span);
