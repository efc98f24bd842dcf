using System.Collections.Immutable;
using Sequencer.Plant.Chemistry;
using Sequencer.Plant.Description;

namespace Sequencer.Plant.Reaction;

/// <summary>
/// pH of one body of water from its content. It remembers the last water, so that an unchanged one
/// costs nothing. Molalities are taken as mol/L: 1 % apart in the strongest water met here.
/// </summary>
internal sealed class WaterChemistry
{
    private const double Unchanged = 1e-9;

    private readonly EquilibriumSolver _solver;
    private readonly bool[] _solids;
    private readonly double[] _gramsPerMole;
    private readonly WaterConductivity _conductivity;
    private readonly int _carbonDioxide;
    private readonly int _hydrogenCyanide;
    private readonly int _lime;
    private readonly int _calcium;
    private readonly double[] _last;
    private double _lastCelsius = double.NaN;

    public WaterChemistry(ContentLayout layout, ImmutableArray<string> precipitates)
    {
        ChemicalSystem system = layout.Chemistry();
        _solver = new EquilibriumSolver(system);
        _conductivity = new WaterConductivity(system);
        ImmutableArray<Precipitate?> known = [.. system.Solids.Select(solid => Precipitate.OfSolid(solid.Name))];
        _solids = [.. known.Select(solid => solid is not null && precipitates.Contains(solid.Name, StringComparer.Ordinal))];
        _gramsPerMole = [.. known.Select(solid => solid is null ? 0.0 : MolarMass.Of(solid.Formula))];
        _carbonDioxide = layout.Carbonate >= 0 ? system.SpeciesIndex("H2CO3") : -1;
        _hydrogenCyanide = layout.Cyanide >= 0 ? system.SpeciesIndex("HCyanide") : -1;
        _calcium = layout.Calcium;
        _lime = _calcium >= 0 ? system.SolidIndex("Portlandite") : -1;
        _last = new double[system.Components.Length];
    }

    /// <summary>The last pH found.</summary>
    public double Ph => _solver.Ph;

    /// <summary>Dissolved carbon dioxide of the last water, mol/L; 0 in a plant without carbonate.</summary>
    public double CarbonDioxide => _carbonDioxide >= 0 ? _solver.Molality[_carbonDioxide] : 0.0;

    /// <summary>Dissolved prussic acid of the last water, mol/L; 0 in a plant without cyanide.</summary>
    public double HydrogenCyanide => _hydrogenCyanide >= 0 ? _solver.Molality[_hydrogenCyanide] : 0.0;

    /// <summary>
    /// How near to saturation with lime the last water was, and its calcium, mol/L: (IAP / K)^(1/3), the root by the three ions of a mole of calcium hydroxide, so that in
    /// water with nothing but lime it is about its calcium over that at saturation; 0 far from it and 1 at it. Lime dissolves slower by it (common practice, no source).
    /// </summary>
    public (double Share, double Calcium) LimeSaturation() => _lime < 0 ? (0.0, 1.0) : (Math.Cbrt(_solver.SaturationRatio(_lime)), _last[_calcium]);

    /// <summary>A solid of a dissolved substance may form here.</summary>
    public bool CanBeSolid(int substance)
    {
        string component = _solver.System.Components[substance].Name;
        return Enumerable.Range(0, _solids.Length).Any(solid => _solids[solid] && _solver.System.Solids[solid].Dissolution.Components.Any(part => part.Component == component));
    }

    /// <summary>mol/L of a substance that the last water solved has dissolved, beside what of it is in solids.</summary>
    public double Dissolved(int substance) => _solver.Dissolved[substance];

    /// <summary>mol/L of a substance in the last water solved, solids and all.</summary>
    public double Total(int substance) => _last[substance];

    /// <summary>mS/cm of the last water solved, at its temperature.</summary>
    public double Conductivity() => _conductivity.MillisiemensPerCentimetre(_solver.Molality, _lastCelsius);

    /// <summary>Grams of solids that a litre of the last water has formed.</summary>
    public double SolidGramsPerLitre()
    {
        double grams = 0.0;
        ReadOnlySpan<double> amounts = _solver.SolidAmounts;
        for (int solid = 0; solid < _solids.Length; solid++)
        {
            grams += _solids[solid] ? amounts[solid] * _gramsPerMole[solid] : 0.0;
        }

        return grams;
    }

    /// <summary>A water was stronger than the activities hold for.</summary>
    public bool WasTooStrong { get; private set; }

    /// <summary>How many times an equilibrium has been solved.</summary>
    public long Solved { get; private set; }

    /// <summary>mol/L dissolved in the order of the layout, degrees Celsius.</summary>
    public EquilibriumOutcome Solve(ReadOnlySpan<double> molPerLitre, double celsius)
    {
        if (IsUnchanged(molPerLitre, celsius))
        {
            return EquilibriumOutcome.Solved;
        }

        Solved++;
        EquilibriumOutcome outcome = _solver.Solve(molPerLitre, celsius, _solids);
        if (outcome.IsSolved)
        {
            molPerLitre.CopyTo(_last);
            _lastCelsius = celsius;
            WasTooStrong |= _solver.IsBeyondDavies;
        }

        return outcome;
    }

    /// <summary>At a pH that is given; hands back the charge left over, eq/L (positive: strong acid is wanting).</summary>
    public EquilibriumOutcome SolveAtPh(ReadOnlySpan<double> molPerLitre, double celsius, double ph, out double charge)
    {
        _lastCelsius = double.NaN;
        EquilibriumOutcome outcome = _solver.SolveAtPh(molPerLitre, celsius, ph, _solids);
        charge = _solver.Charge;
        return outcome;
    }

    /// <summary>Charges of all ions against each other over the sum of their sizes, in the last water solved.</summary>
    public double ChargeImbalance()
    {
        double sum = 0.0;
        double size = 0.0;
        ReadOnlySpan<double> molality = _solver.Molality;
        for (int index = 0; index < molality.Length; index++)
        {
            double charge = _solver.System.Species[index].Charge * molality[index];
            sum += charge;
            size += Math.Abs(charge);
        }

        return size > 0.0 ? sum / size : 0.0;
    }

    private bool IsUnchanged(ReadOnlySpan<double> molPerLitre, double celsius)
    {
        bool same = Math.Abs(celsius - _lastCelsius) < Unchanged;
        for (int index = 0; same && index < molPerLitre.Length; index++)
        {
            same = Math.Abs(molPerLitre[index] - _last[index]) <= Unchanged * _last[index];
        }

        return same;
    }
}
