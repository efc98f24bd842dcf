using Sequencer.Plant.Settling;
using Sequencer.Plant.Tests.OutsideChecks;
using static Sequencer.Plant.Tests.Chemistry.Expect;

namespace Sequencer.Plant.Tests.Settling;

/// <summary>Flocs that grow and break: the equations of Argaman and Kaufman and of Smoluchowski (constants from memory), worked out by hand.</summary>
public sealed class FlocculationTests
{
    /// <summary>5.1e-5 / (5.1e-5 + 1.1e-7 x 50) = 0.903.</summary>
    [Fact]
    public void Catching_and_breaking_are_even_where_nothing_changes()
    {
        double even = Flocculation.Even(1.0, 50.0, Flocculation.Breaking);
        Within(0.903, even, 0.001);
        Within(0.0, Flocculation.Rate(even, 1.0, 50.0, Flocculation.Breaking), 1e-15);
        Assert.True(Flocculation.Even(1.0, 100.0, Flocculation.Breaking) < even);
    }

    /// <summary>Gt of 1e4 to 1e5 is what flocculators are given (handbook range): with 50 1/s for 20 min 0.95 of the way is gone.</summary>
    [Fact]
    public void The_usual_time_of_a_flocculator_is_about_what_it_takes()
    {
        double flocs = 0.0;
        for (int second = 0; second < 1200; second++)
        {
            flocs += Flocculation.Rate(flocs, 1.0, 50.0, Flocculation.Breaking);
        }

        Assert.InRange(flocs / Flocculation.Even(1.0, 50.0, Flocculation.Breaking), 0.94, 0.98);
    }

    [Fact]
    public void Harder_stirring_makes_smaller_flocs()
    {
        Within(0.25e-3, Flocculation.Largest(0.5e-3, 200.0), 1e-9);
        Within(0.0, Flocculation.Growth(0.5e-3, 0.5e-3, 0.01, 1.0, 50.0), 1e-18);
        Assert.True(Flocculation.Growth(0.5e-3, 0.5e-3, 0.01, 1.0, 60.0) < 0.0);
        Assert.True(Flocculation.Growth(0.5e-3, 0.5e-3, 0.01, 1.0, 40.0) > 0.0);
    }

    /// <summary>4/(3 pi) x 0.001 x 50 = 0.0212 1/s, slowed to 0.0212 / 1.424.</summary>
    [Fact]
    public void Small_flocs_grow_by_their_collisions() =>
        Within(0.0212 / 1.424 * 1e-5 * 0.98, Flocculation.Growth(1e-5, 0.5e-3, 0.001, 1.0, 50.0), 1e-9);

    [Fact]
    public void What_nothing_coats_does_not_stick()
    {
        Within(0.0, Flocculation.Sticking(0.0, 1.0), 0.0);
        Within(0.5, Flocculation.Sticking(0.02, 1.0), 1e-12);
        Within(1.0, Flocculation.Sticking(1.0, 0.0), 1e-12);
    }

    /// <summary>0.1 mm, 10 kg/m3 heavier than water of 1 mPa s: 5.45e-6 m/s; a hundredth of flocs take 4.6 % off.</summary>
    [OutsideCheck(Basis.Computed)]
    [Fact]
    public void A_crowd_settles_slower()
    {
        Within(5.45e-6, HinderedSettling.Alone(1e-4, 1.0, 1e-3), 0.01e-6);
        Within(0.954, HinderedSettling.Crowded(0.99), 0.001);
        Within(0.0, HinderedSettling.Crowded(-0.1), 0.0);
    }
}
