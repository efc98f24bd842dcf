using System.Collections.Immutable;

namespace Sequencer.Language.Rules;

/// <summary>Every rule the checker runs, in no meaningful order: no rule leans on another.</summary>
internal static class ProgramRules
{
    public static ImmutableArray<IProgramRule> All { get; } = [];
}
