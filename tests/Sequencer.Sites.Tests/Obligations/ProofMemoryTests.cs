using Sequencer.Control.TransitionSystems;
using Sequencer.Proof;

namespace Sequencer.Sites.Tests.Obligations;

/// <summary>What was proved before is found again by what it can depend on, and believed only after the same check as ever.</summary>
public sealed class ProofMemoryTests
{
    private const string Name = "U.step10.ends";

    [Fact]
    public void A_proof_is_found_again()
    {
        Memory memory = new();
        Holds first = Assert.IsType<Holds>(Decide(OwedProgram.System, memory));
        Holds second = Assert.IsType<Holds>(Decide(OwedProgram.System, memory));
        Assert.Equal("found before", second.Engine);
        Assert.Equal(Meaning(first.Invariant), Meaning(second.Invariant));
    }

    [Theory]
    [InlineData("")]
    [InlineData("not SMT-LIB at all (((")]
    [InlineData("(define-fun |#found| () Bool true)\n")]
    [InlineData("(define-fun |#found| () Bool (<= |U.step10.age| 3))\n")]
    [InlineData("(define-fun |#found| () Bool |no such state|)\n")]
    public void What_does_not_prove_it_is_not_believed(string text)
    {
        Memory memory = new();
        Decide(OwedProgram.System, memory);
        foreach (string key in memory.Texts.Keys.ToArray())
        {
            memory.Texts[key] = text;
        }

        Assert.DoesNotContain("found before", Assert.IsType<Holds>(Decide(OwedProgram.System, memory)).Engine, StringComparison.Ordinal);
    }

    [Fact]
    public void After_an_edit_so_much_of_a_proof_as_still_holds_may_be_enough()
    {
        Memory memory = new();
        Decide(OwedProgram.System, memory);
        Holds after = Assert.IsType<Holds>(Decide(OwedProgram.Edited("limit 20 s then hold", "limit 25 s then hold"), memory));
        Assert.Equal("found before the edit", after.Engine);
        Assert.Equal("found before", Assert.IsType<Holds>(Decide(OwedProgram.Edited("limit 20 s then hold", "limit 25 s then hold"), memory)).Engine);
    }

    [Fact]
    public void A_program_that_differs_in_what_matters_is_proved_anew()
    {
        Memory memory = new();
        Decide(OwedProgram.System, memory);
        Assert.IsType<Fails>(Decide(OwedProgram.WithStuck("U.step10.clock"), memory));
    }

    /// <summary>What the invariant says, in whatever order.</summary>
    private static string Meaning(Expression invariant) => TransitionSystem.Create(
        "invariant", 100, [], OwedProgram.System.States, [], [], [], [OwedProgram.System.Requirements[0] with { Holds = invariant }], []).Meaning;

    private static Verdict Decide(TransitionSystem system, Memory memory) =>
        Prover.Decide(system, system.Requirements.Single(requirement => requirement.Name == Name), ProofOptions.Default, memory, null, CancellationToken.None);
}
