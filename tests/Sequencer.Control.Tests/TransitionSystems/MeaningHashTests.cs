using System.Collections.Immutable;
using Sequencer.Control.TransitionSystems;
using Sequencer.Testing;

namespace Sequencer.Control.Tests.TransitionSystems;

public sealed class MeaningHashTests
{
    private static readonly Variable Start = new("start", VariableRole.Input, 0, Sort.Boolean, IntegerRange.Boolean);
    private static readonly Variable Stop = new("stop", VariableRole.Input, 1, Sort.Boolean, IntegerRange.Boolean);
    private static readonly Variable Running = new("running", VariableRole.State, 0, Sort.Boolean, IntegerRange.Boolean);

    [Fact]
    public void The_hash_is_64_hexadecimal_digits() =>
        Assert.Matches("^[0-9a-f]{64}$", MeaningHash.Of(Latch(new ExpressionBuilder())));

    [Fact]
    public void The_order_in_which_expressions_were_made_has_no_part_in_it()
    {
        ExpressionBuilder other = new();
        other.Not(other.Variable(Stop));
        other.Or(other.Variable(Running), other.Variable(Start));
        Assert.Equal(MeaningHash.Of(Latch(new ExpressionBuilder())), MeaningHash.Of(Latch(other)));
    }

    [Fact]
    public void Random_systems_made_in_a_used_builder_keep_their_hash()
    {
        for (int seed = 0; seed < 50; seed++)
        {
            ExpressionBuilder used = new();
            RandomSystem.Create(seed + 1000, builder: used);
            Assert.Equal(MeaningHash.Of(RandomSystem.Create(seed)), MeaningHash.Of(RandomSystem.Create(seed, builder: used)));
        }
    }

    [Fact]
    public void Two_thousand_random_systems_have_two_thousand_hashes()
    {
        HashSet<string> hashes = [.. Enumerable.Range(0, 2000).Select(seed => MeaningHash.Of(RandomSystem.Create(seed)))];
        Assert.Equal(2000, hashes.Count);
    }

    [Fact]
    public void Wording_has_no_part_in_it()
    {
        string first = MeaningHash.Of(Latch(new ExpressionBuilder(), words: "never stopped and running"));
        Assert.Equal(first, MeaningHash.Of(Latch(new ExpressionBuilder(), words: "other words")));
    }

    [Fact]
    public void Each_part_of_the_meaning_changes_it()
    {
        ImmutableArray<string> hashes =
        [
            MeaningHash.Of(Latch(new ExpressionBuilder())),
            MeaningHash.Of(Latch(new ExpressionBuilder(), initial: 1)),
            MeaningHash.Of(Latch(new ExpressionBuilder(), scan: 200)),
            MeaningHash.Of(Latch(new ExpressionBuilder(), output: "P102")),
            MeaningHash.Of(Latch(new ExpressionBuilder(), startWins: true)),
            MeaningHash.Of(Latch(new ExpressionBuilder(), requirement: "H2")),
            MeaningHash.Of(Latch(new ExpressionBuilder(), assumed: true)),
            MeaningHash.Of(Latch(new ExpressionBuilder(), retained: true)),
        ];
        Assert.Equal(hashes.Length, hashes.Distinct().Count());
    }

    private static TransitionSystem Latch(
        ExpressionBuilder builder,
        long initial = 0,
        int scan = 100,
        string output = "P101",
        bool startWins = false,
        string requirement = "H1",
        string words = "never",
        bool assumed = false,
        bool retained = false)
    {
        Expression start = builder.Variable(Start);
        Expression stop = builder.Variable(Stop);
        Expression running = builder.Variable(Running);
        Expression next = startWins
            ? builder.Or(start, builder.And(running, builder.Not(stop)))
            : builder.And(builder.Or(start, running), builder.Not(stop));
        return TransitionSystem.Create(
            "latch",
            scan,
            [Start, Stop],
            [new StateVariable(Running, initial, next, retained, StatePurpose.Control, RandomSystem.Origin)],
            [new OutputVariable(output, next, RandomSystem.Origin)],
            [],
            assumed ? [new Assumption("A1", "apart", builder.Not(builder.And(start, stop)), RandomSystem.Origin)] : [],
            [new Requirement(requirement, "title", words, RequirementKind.Never, builder.Or(builder.Not(stop), builder.Not(next)), RandomSystem.Origin)],
            []);
    }
}
