using System.Collections.Immutable;
using Sequencer.Language.Units;
using Sequencer.Text;

namespace Sequencer.Language.Programs;

/// <summary>
/// The outputs start only with the condition surely true (it is not looked at afterwards); after
/// <see cref="Patience"/> of a refused start the unit asks for <see cref="Reaction"/>.
/// </summary>
public sealed record Permissive(
    string Name,
    string Title,
    ImmutableArray<Output> Outputs,
    Condition Condition,
    Duration? Patience,
    Reaction Reaction,
    SourceSpan Span);
