using Sequencer.Control.TransitionSystems;
using Sequencer.Testing.Verifiers;

namespace Sequencer.Proof.Tests.Strengthening;

/// <summary>Places in a queue are a permutation: too many cases for clauses, few facts if they are guessed.</summary>
public sealed class QueuePlacesTests
{
    [Theory]
    [InlineData(3)]
    [InlineData(8)]
    public void Of_a_queue_one_is_first(int reactors)
    {
        TransitionSystem system = ScalingFamilies.Header(reactors, false);
        Holds holds = Assert.IsType<Holds>(Decide(system));
        Assert.Equal("places in a queue", holds.Engine);
    }

    [Theory]
    [InlineData(3)]
    [InlineData(8)]
    public void A_queue_in_which_two_can_get_one_place_is_found_out(int reactors) =>
        Assert.Equal(4, Assert.IsType<Fails>(Decide(ScalingFamilies.Header(reactors, true))).Trace.Scans);

    private static Verdict Decide(TransitionSystem system) => Prover.Decide(system, system.Requirements[0], ProofOptions.Default, null, CancellationToken.None);
}
