using System.Collections.Immutable;
using Sequencer.Language.Units;
using Sequencer.Text;

namespace Sequencer.Language.Programs;

/// <summary>
/// A fact that several instruments tell together: M of N (MooN of IEC 61511). <see cref="Fact"/> is what
/// the vote says, built of the members; <see cref="Differ"/> is how long they may disagree before an alarm.
/// </summary>
public sealed record Vote(
    string Name,
    string Title,
    int Needed,
    ImmutableArray<Condition> Members,
    Condition Fact,
    Duration? Differ,
    SourceSpan Span)
{
    /// <summary>Some members say so and some do not; a member that is not usable says neither.</summary>
    public Condition Disagreement => new AllOf([new AnyOf(Members, Span), new AnyOf([.. Members.Select(member => new Negation(member, Span))], Span)], Span);

    public string DiffersInWords() => $"{Title}: the members of the vote {Name} disagree";

    public string HasBadMemberInWords() => $"{Title}: a member of the vote {Name} is not usable";
}
