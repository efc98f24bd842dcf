using System.Collections.Immutable;
using System.Globalization;
using Sequencer.Language.Programs;
using Sequencer.Language.Syntax;
using Sequencer.Language.Units;
using Sequencer.Text;

namespace Sequencer.Language.Binding;

/// <summary>Votes of switches and of comparisons of readings.</summary>
internal sealed class VoteBinder
{
    /// <summary>Instruments of one vote; the fact has a term for each choice of those that are needed.</summary>
    private const int MostMembers = 5;

    private readonly BindingContext _context;
    private readonly AmountBinder _amounts;
    private readonly DeclarationBinder _declarations;

    public VoteBinder(BindingContext context, AmountBinder amounts, DeclarationBinder declarations)
    {
        _context = context;
        _amounts = amounts;
        _declarations = declarations;
    }

    public Vote? Bind(VotedSyntax syntax, LinePlace place)
    {
        string[] numbers = syntax.Vote.Text.Split("oo");
        int needed = int.Parse(numbers[0], CultureInfo.InvariantCulture);
        int voters = int.Parse(numbers[1], CultureInfo.InvariantCulture);
        Duration? differ = _amounts.Time(syntax.Differ, place);
        if (needed < 1 || needed > voters || voters != syntax.Members.Length || voters > MostMembers)
        {
            _context.Report(GuardDiagnostics.ImpossibleVote(place.At(syntax.Vote), syntax.Vote.Text, syntax.Members.Length, MostMembers));
            return null;
        }

        ImmutableArray<Condition?> bound = [.. syntax.Members.Select(member => Member(member, place))];
        if (bound.Contains(null))
        {
            return null;
        }

        ImmutableArray<Condition> members = [.. bound.OfType<Condition>()];
        for (int index = 1; index < members.Length; index++)
        {
            if (members.Take(index).Any(before => before.Span.Text.SequenceEqual(members[index].Span.Text)))
            {
                _context.Report(NameDiagnostics.ListedTwice(members[index].Span, members[index].Span.Text.ToString()));
                return null;
            }
        }

        if (syntax.IfBad is null && members.Any(member => Usable(member) is not null))
        {
            _context.Report(GuardDiagnostics.BadMemberUnsaid(place.At(syntax.Name), syntax.Name.Text));
            return null;
        }

        SourceSpan span = place.At(syntax);
        Condition fact = syntax.IfBad?.Text == "fewer votes" ? FewerVotes(needed, members, span) : AtLeast(needed, members, span);
        return new Vote(syntax.Name.Text, syntax.Title.Text, needed, members, fact, differ, span);
    }

    private Condition? Member(ExpressionSyntax syntax, LinePlace place)
    {
        Condition? member = _declarations.Conditions.Bind(syntax, place);
        Condition? bare = member is Negation negation ? negation.Condition : member;
        if (bare is null or SwitchFact or CompareFact or WithinFact)
        {
            return member;
        }

        _context.Report(GuardDiagnostics.NoVoter(place.At(syntax)));
        return null;
    }

    /// <summary>Some choice of the needed number of facts holds.</summary>
    private static AnyOf AtLeast(int needed, ImmutableArray<Condition> facts, SourceSpan span) =>
        new AnyOf([.. Choices(needed, facts).Select(choice => choice.Length == 1 ? choice[0] : new AllOf(choice, span))], span);

    /// <summary>
    /// What is not usable drops out: of the rest the needed number must say so, or all of them where they
    /// are fewer; with none left nothing is known.
    /// </summary>
    private static AnyOf FewerVotes(int needed, ImmutableArray<Condition> members, SourceSpan span)
    {
        ImmutableArray<Condition> usable = [.. members.Select(member => Usable(member) ?? new ConstantCondition(true, span))];
        ImmutableArray<Condition> say = [.. members.Zip(usable, (member, known) => (Condition)new AllOf([known, member], span))];
        Condition anyLeft = new AnyOf(usable, span);
        Condition allThatAreLeft = new AllOf(
            [.. say.Zip(usable, (says, known) => (Condition)new AnyOf([says, new Negation(known, span)], span))], span);
        return new AnyOf(
            [
                AtLeast(needed, say, span),
                new AllOf([anyLeft, new Negation(AtLeast(needed, usable, span), span), allThatAreLeft], span),
                new AllOf([new Negation(anyLeft, span), .. members], span),
            ],
            span);
    }

    /// <summary>All readings of the member are usable; null for a switch, which always is.</summary>
    private static Condition? Usable(Condition member)
    {
        IEnumerable<Quantity> sides = (member is Negation negation ? negation.Condition : member) switch
        {
            CompareFact compare => [compare.Left, compare.Right],
            WithinFact within => [within.Value, within.Lower, within.Upper],
            _ => [],
        };
        ImmutableArray<Condition> readings =
        [
            .. sides.SelectMany(QuantityMeasure.Leaves).OfType<ReadingQuantity>().Select(reading => reading.Input).DistinctBy(input => input.Tag)
                .Select(input => new UsableFact(input, member.Span)),
        ];
        return readings.Length switch
        {
            0 => null,
            1 => readings[0],
            _ => new AllOf(readings, member.Span),
        };
    }

    private static IEnumerable<ImmutableArray<Condition>> Choices(int needed, ImmutableArray<Condition> facts) =>
        from mask in Enumerable.Range(0, 1 << facts.Length)
        where int.PopCount(mask) == needed
        select (ImmutableArray<Condition>)[.. facts.Where((_, index) => (mask >> index & 1) == 1)];
}
