using CsCheck;
using Sequencer.Plant.Description;
using Sequencer.Testing;

namespace Sequencer.Plant.Tests.Runs;

public sealed class LockstepTests
{
    /// <summary>Balances are exact in the method; what is left is rounding.</summary>
    private const double Closed = 1e-9;

    private static readonly PlantModel Marlpit = RunningPlant.Site("marlpit-wharf");
    private static readonly PlantModel Pit = RunningPlant.Site("one-pit");

    private static string Trace(PlantModel model, ulong seed, double scan)
    {
        RunningPlant plant = RunningPlant.Start(model, seed);
        List<string> lines = [];
        string[] order = ["XV300", "AG301", "P304", "P303", "XV321", "P320A"];
        for (int turn = 0; turn < 40; turn++)
        {
            plant.Command((turn / order.Length) % 2 == 0, order[turn % order.Length]);
            for (double passed = 0.0; passed < 30.0 - 1e-9; passed += scan)
            {
                plant.Plant.Advance(scan);
            }

            lines.Add(FormattableString.Invariant($"{plant.Milliamps("AT301"):R} {plant.Quantity("TK301.pH"):R} {plant.Quantity("TK301.volume"):R}"));
        }

        return string.Join('\n', lines);
    }

    [Fact]
    public void The_same_seed_and_calls_give_the_same_bits_and_another_seed_other_noise()
    {
        Assert.Equal(Trace(Pit, 7, 0.1), Trace(Pit, 7, 0.1));
        Assert.NotEqual(Trace(Pit, 7, 0.1), Trace(Pit, 8, 0.1));
    }

    [Fact]
    public void How_often_it_is_looked_at_does_not_change_the_plant()
    {
        RunningPlant fine = RunningPlant.Start(Pit);
        RunningPlant coarse = RunningPlant.Start(Pit);
        (string Tag, bool On, double Seconds)[] script = [("AG301", true, 2.0), ("XV300", true, 900.0), ("P304", true, 60.0), ("P304", false, 120.0), ("XV300", false, 60.0)];
        foreach ((string tag, bool on, double seconds) in script)
        {
            fine.Command(on, tag);
            coarse.Command(on, tag);
            fine.Run(seconds);
            for (double passed = 0.0; passed < seconds; passed += 1.0)
            {
                coarse.Plant.Advance(1.0);
            }
        }

        Assert.Equal(coarse.Quantity("TK301.volume"), fine.Quantity("TK301.volume"), 1e-7);
        Assert.Equal(coarse.Quantity("TK301.pH"), fine.Quantity("TK301.pH"), 0.01);
        Assert.Equal(coarse.Quantity("TK301.sodium"), fine.Quantity("TK301.sodium"), 1e-4);
    }

    [Fact]
    public void A_command_repeated_in_every_scan_changes_nothing()
    {
        RunningPlant once = RunningPlant.Start(Pit);
        RunningPlant often = RunningPlant.Start(Pit);
        once.Command(true, "XV300");
        for (int scan = 0; scan < 3000; scan++)
        {
            often.Command(true, "XV300");
            once.Plant.Advance(0.1);
            often.Plant.Advance(0.1);
        }

        Assert.Equal(once.Quantity("TK301.volume"), often.Quantity("TK301.volume"));
        Assert.Equal(((PlantRun)once.Plant).Effort, ((PlantRun)often.Plant).Effort);
    }

    [Fact]
    public void Balances_close_whatever_is_commanded_and_whatever_breaks() =>
        Gen.Select(Gen.Int[0, 1], Gen.Select(Gen.Int[0, 200], Gen.Bool, Gen.Int[1, 600]).Array[5, 40]).SampleRepeatably(
            (site, actions) =>
            {
                IPlant plant = PlantRun.Start(site == 0 ? Marlpit : Pit, 1);
                foreach ((int what, bool on, int scans) in actions)
                {
                    Act(plant, what, on);
                    for (int scan = 0; scan < scans; scan++)
                    {
                        plant.Advance(0.5);
                    }
                }

                Assert.Null(plant.Failure);
                PlantBalances balances = plant.Balances();
                Assert.InRange(balances.Volume, -Closed, Closed);
                Assert.True(Math.Abs(balances.Substance) < Closed, $"{balances}");
                Assert.InRange(balances.Charge, -Closed, Closed);
            },
            iterations: 200);

    /// <summary>Two of three actions are commands, so that tanks fill and empty; the rest are faults.</summary>
    private static void Act(IPlant plant, int what, bool on)
    {
        if (what % 3 < 2)
        {
            plant.Command(what % plant.Actuators.Length, on);
        }
        else if (on)
        {
            plant.Inject(what % plant.Faults.Length);
        }
        else
        {
            plant.Clear(what % plant.Faults.Length);
        }
    }

    [Fact]
    public void An_idle_plant_costs_next_to_nothing()
    {
        PlantRun plant = PlantRun.Start(Marlpit, 1);
        for (int scan = 0; scan < 36_000; scan++)
        {
            plant.Advance(0.1);
        }

        Assert.InRange(plant.Effort.Steps, 1, 100);
        Assert.InRange(plant.Effort.Equilibria, 1, 500);
    }

    [Fact]
    public void An_unphysical_state_stops_the_run_and_names_equation_and_place()
    {
        PlantModel frozen = PlainTank.Model(tank: ", heat_loss: 10 min") with { AmbientCelsius = -40.0 };
        IPlant plant = PlantRun.Start(frozen, 1);
        for (int scan = 0; scan < 36_000; scan++)
        {
            plant.Advance(0.1);
        }

        Assert.Equal(("balance of heat", "TK1"), (plant.Failure?.Equation, plant.Failure?.Place));
        Assert.Contains("temperature", plant.Failure?.ToString(), StringComparison.Ordinal);
        double stopped = plant.Time;
        plant.Advance(0.1);
        Assert.Equal(stopped, plant.Time);
    }

    [Theory]
    [InlineData(0.0)]
    [InlineData(-1.0)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void Time_goes_forward_by_finite_steps_only(double seconds) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => PlantRun.Start(Pit, 1).Advance(seconds));
}
