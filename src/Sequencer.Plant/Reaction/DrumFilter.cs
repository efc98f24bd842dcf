using Sequencer.Plant.Description;
using Sequencer.Plant.Filtration;
using Sequencer.Plant.Hydraulics;

namespace Sequencer.Plant.Reaction;

/// <summary>
/// A drum filter's equations. With the vacuum p, the coat's thickness L, the dry solids w on each square metre of it, the turn T (s) and
/// c kg of dry solids to each m3 of filtrate:
/// <code>
/// vacuum:    dp/dt = (p_s - p) / tau,   p_s = deepest / (1 + (deepest / bare - 1) R_cloth / (R_cloth + L / k))
/// filtrate:  what a turning drum gives (<see cref="RotaryDrum"/>) through R_cloth + L / k + alpha (w - w_T), w_T what one turn leaves
///            and then through its pipes, Q = W (1 - (Q / Q_p)^2)
/// solids:    a share 1 - (1 - h) exp(-L / L_0) of what the filtrate brought stays on the drum, filter aid as coat, the rest as cake
/// fall:      a vacuum weaker than what holds a coat lets coat and cake slide back into the trough
/// knife:     of what stands out beyond its distance from the cloth a turn takes all: the cake first, then the coat
/// </code>
/// A crack is bare cloth beside the coat: where the coat's resistance stands, that of both side by side. p_s is that of a pump whose suction falls in a straight line from the vacuum that it reaches shut, and of air that finds its way through cloth and
/// coat (our own simplification); a wet coat lets less of it through than a dry one would, so that p_s is on the weak side.
/// </summary>
internal sealed class DrumFilter
{
    private const double LitresPerCubicMetre = 1000.0;
    private const double GramsPerKilogram = 1000.0;
    private const double Kelvin = 273.15;

    /// <summary>A drum slower than this share of its speed is one that takes so much longer for a turn.</summary>
    private const double Slowest = 0.01;

    /// <summary>How soon a coat that nothing holds is off the drum (our own choice).</summary>
    private const double FallsInSeconds = 60.0;

    /// <summary>Share of the drum whose cloth a cracked coat leaves bare (our own choice).</summary>
    private const double CrackedOfArea = 0.01;

    /// <summary>Ca(OH)2, g/mol.</summary>
    private const double LimeGramsPerMole = 74.09;

    private readonly StateLayout _layout;
    private readonly double[] _gramsEach;
    private readonly int _index;
    private readonly int _filterAid;
    private bool _isCracked;

    public DrumFilter(DrumDescription description, int index, ContentLayout contents, StateLayout layout, TankBody trough, TankBody filtrateTo, TankBody knife, Drive turnedBy, Drive vacuumBy)
    {
        Description = description;
        Trough = trough;
        FiltrateTo = filtrateTo;
        Knife = knife;
        TurnedBy = turnedBy;
        VacuumBy = vacuumBy;
        _index = index;
        _layout = layout;
        _filterAid = contents.FilterAid;
        _gramsEach = new double[contents.Count];
        _gramsEach[contents.Lime] = LimeGramsPerMole;
        _gramsEach[contents.Suspended] = 1.0;
        _gramsEach[contents.FilterAid] = 1.0;
        foreach ((Substance substance, double gramsPerMole) in description.Retained)
        {
            int place = contents.Dissolved.IndexOf(substance);
            if (place >= 0)
            {
                _gramsEach[place] = gramsPerMole;
            }
        }
    }

    public DrumDescription Description { get; }

    public TankBody Trough { get; }

    public TankBody FiltrateTo { get; }

    public TankBody Knife { get; }

    public Drive TurnedBy { get; }

    public Drive VacuumBy { get; }

    /// <summary>Below the air's pressure.</summary>
    public double VacuumPascals(ReadOnlySpan<double> state) => state[_layout.Vacuum(_index)];

    public double CoatMetres(ReadOnlySpan<double> state) =>
        state[_layout.Held(_index) + _filterAid] / GramsPerKilogram / (Description.CoatKilogramsPerCubicMetre * Description.AreaSquareMetres);

    /// <summary>Dry solids other than filter aid on a square metre, kg.</summary>
    public double CakeKilogramsPerSquareMetre(ReadOnlySpan<double> state)
    {
        double grams = 0.0;
        for (int content = 0; content < _gramsEach.Length; content++)
        {
            grams += content == _filterAid ? 0.0 : state[_layout.Held(_index) + content] * _gramsEach[content];
        }

        return grams / GramsPerKilogram / Description.AreaSquareMetres;
    }

    /// <summary>Filtrate in L/s if the trough has it.</summary>
    public double WantedFlow(double time, ReadOnlySpan<double> state)
    {
        double pressure = VacuumPascals(state);
        if (pressure <= 0.0)
        {
            return 0.0;
        }

        double turn = TurnSeconds(time);
        double coat = CoatMetres(state);
        FilterCake fresh = FreshCake(state, pressure, Retention(coat));
        double viscosity = Viscosity(state[_layout.Heat(Trough.Index)] / state[_layout.Volume(Trough.Index)]);
        double clean = 1.0 / Conductance(coat);
        double flux = Flux(fresh, viscosity, clean, pressure, turn);
        double left = CakeKilogramsPerSquareMetre(state) - (flux * fresh.DryPerFiltrate * turn);
        if (left > 0.0)
        {
            flux = Flux(fresh, viscosity, clean + (CakeResistance(pressure) * left), pressure, turn);
        }

        return ThroughPipes(flux * Description.AreaSquareMetres * LitresPerCubicMetre);
    }

    /// <summary>The pipes take (Q / Q_p)^2 of the vacuum: Q = W (1 - (Q / Q_p)^2), W the flow without them.</summary>
    private double ThroughPipes(double wanted)
    {
        double ratio = wanted / Description.PipesCarryLitresPerSecond;
        return 2.0 * wanted / (1.0 + Math.Sqrt(1.0 + (4.0 * ratio * ratio)));
    }

    /// <summary>Adds what so much filtrate does, L/s.</summary>
    public void AddRates(double time, double flow, ReadOnlySpan<double> state, Span<double> rates)
    {
        int trough = Trough.Index;
        int receiver = FiltrateTo.Index;
        double coat = CoatMetres(state);
        double share = flow / state[_layout.Volume(trough)];
        double retention = Retention(coat);
        rates[_layout.Filtered(_index)] = flow;
        rates[_layout.Volume(trough)] -= flow;
        rates[_layout.Volume(receiver)] += flow;
        double heat = share * state[_layout.Heat(trough)];
        rates[_layout.Heat(trough)] -= heat;
        rates[_layout.Heat(receiver)] += heat;
        for (int content = 0; content < _gramsEach.Length; content++)
        {
            double amount = share * state[_layout.Mixed(trough) + content];
            double stays = _gramsEach[content] > 0.0 ? retention * amount : 0.0;
            rates[_layout.Mixed(trough) + content] -= amount;
            rates[_layout.Mixed(receiver) + content] += amount - stays;
            rates[_layout.Held(_index) + content] += stays;
        }

        rates[_layout.Vacuum(_index)] = ((VacuumBy.Effect(time) * ReachedPascals(coat)) - VacuumPascals(state)) / Description.PullsDownInSeconds;
        Cut(time, coat, state, rates);
        Fall(state, rates);
    }

    /// <summary>The coat has a crack down to the cloth.</summary>
    public void Crack(bool cracked) => _isCracked = cracked;

    public double NextKink(double time) => Math.Min(TurnedBy.NextKink(time), VacuumBy.NextKink(time));

    /// <summary>Without vacuum coat and cake slide back into the trough; before any was pulled there is none.</summary>
    private void Fall(ReadOnlySpan<double> state, Span<double> rates)
    {
        double weak = Math.Clamp(1.0 - (VacuumPascals(state) / Description.FallsBelowPascals), 0.0, 1.0);
        for (int content = 0; content < _gramsEach.Length; content++)
        {
            double fallen = weak * state[_layout.Held(_index) + content] / FallsInSeconds;
            rates[_layout.Held(_index) + content] -= fallen;
            rates[_layout.Mixed(Trough.Index) + content] += fallen;
        }
    }

    private void Cut(double time, double coat, ReadOnlySpan<double> state, Span<double> rates)
    {
        double cake = CakeKilogramsPerSquareMetre(state) / Description.CakeKilogramsPerCubicMetre;
        double beyond = coat + cake - Knife.LevelMetres(state[_layout.Volume(Knife.Index)]);
        if (beyond <= 0.0)
        {
            return;
        }

        double turns = TurnedBy.Effect(time) / Description.TurnSeconds;
        double ofCake = cake > 0.0 ? Math.Min(1.0, beyond / cake) * turns : 0.0;
        double ofCoat = coat > 0.0 ? Math.Max(0.0, beyond - cake) / coat * turns : 0.0;
        for (int content = 0; content < _gramsEach.Length; content++)
        {
            double taken = (content == _filterAid ? ofCoat : ofCake) * state[_layout.Held(_index) + content];
            rates[_layout.Held(_index) + content] -= taken;
            rates[_layout.WentOut + 1 + content] += taken;
            rates[_layout.Skimmed(_index) + (content == _filterAid ? 0 : 1)] += taken * _gramsEach[content];
        }
    }

    private double Flux(FilterCake cake, double viscosity, double resistance, double pressure, double turn) => cake.DryPerFiltrate > 0.0
        ? RotaryDrum.Flux(cake, viscosity, resistance, pressure, Description.Submerged, turn)
        : Description.Submerged * pressure / (viscosity * resistance);

    private double TurnSeconds(double time) => Description.TurnSeconds / Math.Max(Slowest, TurnedBy.Effect(time));

    /// <summary>What goes through a crack meets bare cloth.</summary>
    private double Retention(double coat)
    {
        double held = 1.0 - ((1.0 - Description.ClothHoldsBack) * Math.Exp(-coat / Description.ClosesAtMetres));
        double past = CrackedShare / Description.ClothPerMetre / Conductance(coat);
        return ((1.0 - past) * held) + (past * Description.ClothHoldsBack);
    }

    /// <summary>1 over the resistance of coat and cloth, m: beside it that of a crack, where there is one.</summary>
    private double Conductance(double coat) =>
        ((1.0 - CrackedShare) / (Description.ClothPerMetre + (coat / Description.CoatSquareMetres))) + (CrackedShare / Description.ClothPerMetre);

    private double CrackedShare => _isCracked ? CrackedOfArea : 0.0;

    private double ReachedPascals(double coat)
    {
        double openness = Description.ClothPerMetre * Conductance(coat);
        return Description.DeepestPascals / (1.0 + (((Description.DeepestPascals / Description.BareClothPascals) - 1.0) * openness));
    }

    private double CakeResistance(double pressure) => FilterCake.ResistanceUnder(pressure, Description.CakeMetresPerKilogram, Description.CakeCompressibility);

    /// <summary>What the trough's water leaves in a pass: filter aid and other solids in layers of their own resistance, one behind the other.</summary>
    private FilterCake FreshCake(ReadOnlySpan<double> state, double pressure, double retention)
    {
        double litres = state[_layout.Volume(Trough.Index)];
        double aid = retention * Math.Max(0.0, state[_layout.Mixed(Trough.Index) + _filterAid]) / litres;
        double other = 0.0;
        for (int content = 0; content < _gramsEach.Length; content++)
        {
            other += content == _filterAid ? 0.0 : retention * Math.Max(0.0, state[_layout.Mixed(Trough.Index) + content]) * _gramsEach[content] / litres;
        }

        double aidResistance = FilterCake.ResistanceOf(Description.CoatSquareMetres, Description.CoatKilogramsPerCubicMetre);
        double all = aid + other;
        return all > 0.0 ? new FilterCake(((aidResistance * aid) + (CakeResistance(pressure) * other)) / all, all) : new FilterCake(aidResistance, 0.0);
    }

    /// <summary>Of water, Pa s: 2.414e-5 x 10^(247.8 / (T - 140)), T in kelvin (from memory; within 2.5 % from 0 to 100 C).</summary>
    private static double Viscosity(double celsius) => 2.414e-5 * Math.Pow(10.0, 247.8 / (celsius + Kelvin - 140.0));
}
