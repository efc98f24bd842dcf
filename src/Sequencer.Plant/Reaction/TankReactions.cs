using System.Collections.Immutable;
using Sequencer.Plant.Description;
using Sequencer.Plant.Hydraulics;

namespace Sequencer.Plant.Reaction;

/// <summary>
/// What reacts in the water of the tanks (<see cref="WaterReactions"/>): dn/dt = V r(c, pH) times the moles that a reaction makes. The pH is solved for each rate, where a
/// reaction that depends on it has what it needs.
/// </summary>
internal sealed class TankReactions
{
    /// <summary>mol/L, 0.05 ug/L of chromium: less of what a reaction needs counts as none, and no equilibrium is solved for it.</summary>
    private const double Traces = 1e-9;

    private readonly StateLayout _layout;
    private readonly ImmutableArray<WaterReaction> _reactions;
    private readonly ImmutableArray<WaterChemistry> _chemistry;
    private readonly double[] _dissolved;

    public TankReactions(StateLayout layout, ContentLayout contents, ImmutableArray<TankBody> tanks, ImmutableArray<string> precipitates, ReactionTimes times)
    {
        _layout = layout;
        _reactions = WaterReactions.Of(contents, times);
        _chemistry = _reactions.IsEmpty ? [] : [.. tanks.Select(_ => new WaterChemistry(contents, precipitates))];
        _dissolved = new double[contents.Dissolved.Length];
    }

    /// <summary>Adds to the rates of a tank, mol/s. They are no numbers where the water has no equilibrium: the step is then cut.</summary>
    public void AddRates(TankBody tank, ReadOnlySpan<double> state, Span<double> rates)
    {
        int mixed = _layout.Mixed(tank.Index);
        double litres = state[_layout.Volume(tank.Index)];
        double ph = 0.0;
        bool isSolved = false;
        foreach (WaterReaction reaction in _reactions)
        {
            double first = state[mixed + reaction.First] / litres;
            double second = reaction.Second >= 0 ? state[mixed + reaction.Second] / litres : double.PositiveInfinity;
            if (first < Traces || second < Traces)
            {
                continue;
            }

            if (reaction.DependsOnPh && !isSolved)
            {
                ph = Ph(tank, state, litres);
                isSolved = true;
            }

            double moles = litres * reaction.Rate(first, second, ph);
            foreach ((int content, double each) in reaction.Changes)
            {
                rates[mixed + content] += each * moles;
            }
        }
    }

    private double Ph(TankBody tank, ReadOnlySpan<double> state, double litres)
    {
        for (int substance = 0; substance < _dissolved.Length; substance++)
        {
            _dissolved[substance] = state[_layout.Mixed(tank.Index) + substance] / litres;
        }

        WaterChemistry chemistry = _chemistry[tank.Index];
        return chemistry.Solve(_dissolved, state[_layout.Heat(tank.Index)] / litres).IsSolved ? chemistry.Ph : double.NaN;
    }
}
