using Sequencer.Language.Programs;

namespace Sequencer.Sites.Proposing;

/// <summary>A condition in words that an author could write in another place.</summary>
internal static class ConditionWords
{
    /// <summary>Conditions deeper than this are taken as they are written.</summary>
    private const int Deepest = 8;

    public static string Of(Condition condition) => Of(condition, Deepest);

    /// <summary>The same as one member of a conjunction, a disjunction or a denial.</summary>
    public static string AsPart(Condition condition) => IsPlain(condition) ? Of(condition) : $"({Of(condition)})";

    private static bool IsPlain(Condition condition) => condition is not (AllOf or AnyOf or StaysFact);

    private static string Of(Condition condition, int depth) => condition switch
    {
        AllOf all when depth > 0 => string.Join(" and ", all.Conditions.Select(part => Part(part, depth - 1))),
        AnyOf any when depth > 0 => string.Join(" or ", any.Conditions.Select(part => Part(part, depth - 1))),
        Negation denied when depth > 0 => "not " + Part(denied.Condition, depth - 1),
        _ => string.Join(' ', condition.Span.Text.ToString().Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)),
    };

    private static string Part(Condition condition, int depth) => IsPlain(condition) ? Of(condition, depth) : $"({Of(condition, depth)})";
}
