using Sequencer.Language.Programs;
using Sequencer.Language.Rules.Analysis;

namespace Sequencer.Sites.Proposing;

/// <summary>One part of a hazard: a condition, or its denial.</summary>
/// <param name="Alone">The condition's words where it stands alone.</param>
/// <param name="Words">The same, fit to be denied and to stand with others.</param>
/// <param name="IsDenied">The hazard is that it is not so.</param>
/// <param name="Size">How many single facts it is made of.</param>
internal sealed record HazardPart(string Alone, string Words, bool IsDenied, int Size)
{
    public HazardPart Denied => this with { IsDenied = !IsDenied };

    public static HazardPart Of(Condition condition)
    {
        bool denied = false;
        while (condition is Negation negation)
        {
            denied = !denied;
            condition = negation.Condition;
        }

        int size = ConditionTree.Parts(condition).Count(part => ConditionTree.Children(part).IsEmpty);
        return new HazardPart(ConditionWords.Of(condition), ConditionWords.AsPart(condition), denied, size);
    }
}
