using System.Collections.Immutable;

namespace Sequencer.Language.Programs;

/// <summary>The transient states of IEC 61512-1 that may have a procedure of their own, and the words for them.</summary>
public static class Sections
{
    public static ImmutableArray<ProceduralState> All { get; } =
        [ProceduralState.Holding, ProceduralState.Restarting, ProceduralState.Stopping, ProceduralState.Aborting];

    /// <summary>The word of the language: <c>holding</c>; of the procedure of a batch, <c>procedure</c>.</summary>
    public static string Word(ProceduralState state) => state switch
    {
        ProceduralState.Running => "procedure",
        ProceduralState.Holding => "holding",
        ProceduralState.Restarting => "restarting",
        ProceduralState.Stopping => "stopping",
        ProceduralState.Aborting => "aborting",
        _ => throw new ArgumentOutOfRangeException(nameof(state), state, "a state without steps"),
    };

    /// <summary>The state that a word of the language names.</summary>
    public static ProceduralState Of(string word) => All.First(state => Word(state) == word);
}
