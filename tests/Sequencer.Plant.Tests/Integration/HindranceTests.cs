using Sequencer.Plant.Integration;
using Sequencer.Plant.Reaction;
using Sequencer.Plant.Tests.Runs;

namespace Sequencer.Plant.Tests.Integration;

/// <summary>Where no step is small enough, the equation and the piece of plant that hinder it are told.</summary>
public sealed class HindranceTests
{
    [Theory]
    [InlineData(0)]
    [InlineData(2)]
    public void The_component_that_has_no_number_hinders(int broken)
    {
        double[] absolute = [1e-6, 1e-6, 1e-6];
        SwitchingIntegrator solver = new(
            (time, state, rates) =>
            {
                rates.Fill(1.0);
                rates[broken] = time > 1.0 ? double.NaN : 1.0;
            },
            absolute,
            1e-6,
            0.1,
            0.01);
        solver.Restart(0.0, [0.0, 0.0, 0.0]);
        StepOutcome outcome = StepOutcome.Accepted;
        while (outcome == StepOutcome.Accepted && solver.End < 2.0)
        {
            outcome = solver.Step(2.0);
        }

        Assert.Equal(StepOutcome.TooSmall, outcome);
        Assert.Equal(broken, solver.Hindrance);
        Assert.InRange(solver.End, 0.9, 1.0 + 1e-6);
    }

    [Theory]
    [InlineData("quillgate")]
    [InlineData("marlpit-wharf")]
    [InlineData("sludge-house")]
    public void Each_number_of_a_plants_state_has_a_place(string site)
    {
        PlantParts parts = new(RunningPlant.Site(site));
        StateTable table = new(parts);
        (string Equation, string Place)[] all = [.. Enumerable.Range(0, parts.Layout.Count).Select(number => (table[number].Equation, table[number].Place))];
        foreach (string tank in parts.Tanks.Select(tank => tank.Description.Name))
        {
            Assert.Contains(("balance of volume", tank), all);
            Assert.Contains(("balance of heat", tank), all);
            Assert.Equal(3, all.Count(place => place == ($"balance of {parts.Contents.Names[0]}", tank)));
        }

        foreach (string line in parts.DosingLines.Select(line => line.Description.Name))
        {
            Assert.Equal(parts.Layout.Contents, all.Count(place => place == ("contents of the dosing line", line)));
        }

        Assert.Equal(parts.Drums.Length, all.Count(place => place.Equation == "vacuum"));
        Assert.Equal(parts.Settlers.Length * (3 + parts.Layout.Contents), all.Count(place => place.Equation == "settling"));
        Assert.Equal(parts.Presses.Length * (4 + parts.Layout.Contents), all.Count(place => place.Equation == "cakes and filtrate"));
    }
}
