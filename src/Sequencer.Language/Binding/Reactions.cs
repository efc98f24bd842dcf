using Sequencer.Language.Programs;
using Sequencer.Language.Syntax;

namespace Sequencer.Language.Binding;

/// <summary>The words for what a unit does about a fault.</summary>
internal static class Reactions
{
    /// <param name="word">As written; the grammar lets reactions through only.</param>
    /// <param name="otherwise">What counts where none is written.</param>
    public static Reaction Of(WordSyntax? word, Reaction otherwise) => word?.Text switch
    {
        null => otherwise,
        "alarm" => Reaction.Alarm,
        "hold" => Reaction.Hold,
        "stop" => Reaction.Stop,
        "abort" => Reaction.Abort,
        "emergency" => Reaction.Emergency,
        _ => throw new System.Diagnostics.UnreachableException(word.Text),
    };
}
