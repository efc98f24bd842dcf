using System.Collections.Immutable;
using Sequencer.Plant.Chemistry;
using Sequencer.Plant.Hydraulics;

namespace Sequencer.Plant.Reaction;

/// <summary>
/// Chromium(VI) reduced by sulphite in the water of the tanks:
/// <code>
/// d Cr(VI)/dt = -r,  d Cr(III)/dt = r,  d S(IV)/dt = -1.5 r,  d S(VI)/dt = 1.5 r,  r = V k(pH) Cr(VI) S(IV)
/// </code>
/// The acid that it takes follows from the balance of charge. The pH is solved for each rate, where both are there.
/// </summary>
internal sealed class TankReduction(
    StateLayout layout, ContentLayout contents, ImmutableArray<TankBody> tanks, ImmutableArray<string> precipitates, double reducedInSeconds)
{
    /// <summary>mol/L of either, 0.05 ug/L of chromium: less counts as none, and no equilibrium is solved for it.</summary>
    private const double Traces = 1e-9;

    private readonly ImmutableArray<WaterChemistry> _chemistry = contents.HasReduction ? [.. tanks.Select(_ => new WaterChemistry(contents, precipitates))] : [];
    private readonly double[] _dissolved = new double[contents.Dissolved.Length];

    /// <summary>Adds to the rates of a tank, mol/s. They are no numbers where the water has no equilibrium: the step is then cut.</summary>
    public void AddRates(TankBody tank, ReadOnlySpan<double> state, Span<double> rates)
    {
        if (!contents.HasReduction)
        {
            return;
        }

        int mixed = layout.Mixed(tank.Index);
        double litres = state[layout.Volume(tank.Index)];
        double chromate = state[mixed + contents.Chromate] / litres;
        double sulphite = state[mixed + contents.Sulphite] / litres;
        if (chromate < Traces || sulphite < Traces)
        {
            return;
        }

        double reduced = litres * ChromateReduction.Rate(chromate, sulphite, Ph(tank, state, litres), reducedInSeconds);
        rates[mixed + contents.Chromate] -= reduced;
        rates[mixed + contents.Chromium] += reduced;
        rates[mixed + contents.Sulphite] -= ChromateReduction.SulphitePerChromate * reduced;
        rates[mixed + contents.Sulphate] += ChromateReduction.SulphitePerChromate * reduced;
    }

    private double Ph(TankBody tank, ReadOnlySpan<double> state, double litres)
    {
        for (int substance = 0; substance < _dissolved.Length; substance++)
        {
            _dissolved[substance] = state[layout.Mixed(tank.Index) + substance] / litres;
        }

        WaterChemistry chemistry = _chemistry[tank.Index];
        return chemistry.Solve(_dissolved, state[layout.Heat(tank.Index)] / litres).IsSolved ? chemistry.Ph : double.NaN;
    }
}
