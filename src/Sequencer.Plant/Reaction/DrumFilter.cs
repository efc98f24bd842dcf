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
/// water:     the pores of what is laid down are full; then dW/dt = (W* - W) / T, W* what <see cref="Dewatering"/> leaves in the time that a turn is
///            out of the bath. A cake that holds its water seals the coat behind it. The knife takes water with the solids
/// </code>
/// What is dissolved of what it holds passes (<see cref="Solubility"/>), also by the water that stays in the pores (our own simplification); what is on it stays solid until it falls.
/// A crack is bare cloth beside the coat: where the coat's resistance stands, that of both side by side. p_s is that of a pump whose suction falls in a straight
/// line from the vacuum that it reaches shut, and of air that finds its way through cloth and coat (our own simplification); a wet coat lets less of it through than a dry one would, so that p_s is on the weak side.
/// </summary>
internal sealed class DrumFilter : ISeparator
{
    private const double LitresPerCubicMetre = 1000.0;

    /// <summary>A drum slower than this share of its speed is one that takes so much longer for a turn.</summary>
    private const double Slowest = 0.01;

    /// <summary>How soon a coat that nothing holds is off the drum (our own choice).</summary>
    private const double FallsInSeconds = 60.0;

    /// <summary>Of what is drawn at least a tenth is filtrate, however thick the slurry: solids beyond that go through with it (our own choice).</summary>
    private const double MostLaidDown = 0.9;

    private readonly StateLayout _layout;
    private readonly int _index;
    private readonly DrumCoat _coat;

    public DrumFilter(DrumDescription description, int index, ContentLayout contents, StateLayout layout, Solubility solubility, TankBody trough, TankBody filtrateTo, TankBody knife, Drive turnedBy, Drive vacuumBy, SealWater? sealWater)
    {
        Description = description;
        Trough = trough;
        FiltrateTo = filtrateTo;
        Knife = knife;
        TurnedBy = turnedBy;
        VacuumBy = vacuumBy;
        SealWater = sealWater;
        _index = index;
        _layout = layout;
        _coat = new DrumCoat(description);
        Holds = new DrumHolds(description, index, contents, layout, solubility, trough.Index);
    }

    public DrumDescription Description { get; }

    /// <summary>What is on it, read from a state.</summary>
    public DrumHolds Holds { get; }

    public TankBody Trough { get; }

    public TankBody FiltrateTo { get; }

    public TankBody Knife { get; }

    public Drive TurnedBy { get; }

    public Drive VacuumBy { get; }

    /// <summary>Of its vacuum pump; null where its temperature tells nothing.</summary>
    public SealWater? SealWater { get; }

    /// <summary>Below the air's pressure.</summary>
    public double VacuumPascals(ReadOnlySpan<double> state) => state[_layout.Vacuum(_index)];

    /// <summary>What it draws from the trough in L/s if the trough has it: filtrate and what stays on the drum.</summary>
    public double WantedFlow(double time, ReadOnlySpan<double> state)
    {
        double pressure = VacuumPascals(state);
        if (pressure <= 0.0)
        {
            return 0.0;
        }

        double turn = TurnSeconds(time);
        double coat = Holds.CoatMetres(state);
        FilterCake fresh = FreshCake(state, pressure, coat);
        double viscosity = WaterProperties.Viscosity(TroughCelsius(state));
        double clean = 1.0 / _coat.Conductance(coat);
        double flux = Flux(fresh, viscosity, clean, pressure, turn);
        double left = Holds.CakeKilogramsPerSquareMetre(state) - (flux * fresh.DryPerFiltrate * turn);
        if (left > 0.0)
        {
            flux = Flux(fresh, viscosity, clean + (_coat.CakeResistance(pressure) * left), pressure, turn);
        }

        return ThroughPipes(flux * Description.AreaSquareMetres * LitresPerCubicMetre) / (1.0 - LaidDown(state, coat));
    }

    /// <summary>The pipes take (Q / Q_p)^2 of the vacuum: Q = W (1 - (Q / Q_p)^2), W the flow without them.</summary>
    private double ThroughPipes(double wanted)
    {
        double ratio = wanted / Description.PipesCarryLitresPerSecond;
        return 2.0 * wanted / (1.0 + Math.Sqrt(1.0 + (4.0 * ratio * ratio)));
    }

    /// <summary>What goes to the receiver in L/s while so much is drawn from the trough.</summary>
    public double Filtrate(double time, double drawn, ReadOnlySpan<double> state)
    {
        double through = drawn * (1.0 - LaidDown(state, Holds.CoatMetres(state)));
        double soaking = Soaking(Water(time, state), through, state);
        return through - soaking;
    }

    /// <summary>Adds what so many L/s from the trough do.</summary>
    public void AddRates(double time, double flow, TankTransfer transfer, ReadOnlySpan<double> state, Span<double> rates)
    {
        double coat = Holds.CoatMetres(state);
        transfer.AddRates(Trough.Index, DrawPoint.Floor, FiltrateTo.Index, flow, state, rates);
        LayerWater water = Water(time, state);
        Hold(flow, coat, water, state, rates);
        double pulled = VacuumBy.Effect(time) * _coat.ReachedPascals(coat);
        if (SealWater is { } seal)
        {
            pulled *= seal.Share(Description.DeepestPascals, time, state);
            seal.AddRates(time, state, rates);
        }

        rates[_layout.Vacuum(_index)] = (pulled - VacuumPascals(state)) / Description.PullsDownInSeconds;
        Cut(time, coat, water, state, rates);
        Fall(state, rates);
    }

    /// <summary>Keeps back from the filtrate the solids, the water between them, and what soaks in (less than none: what drains).</summary>
    private void Hold(double flow, double coat, LayerWater water, ReadOnlySpan<double> state, Span<double> rates)
    {
        int trough = _layout.Mixed(Trough.Index);
        int receiver = _layout.Mixed(FiltrateTo.Index);
        int held = _layout.Held(_index);
        double share = flow / state[_layout.Volume(Trough.Index)];
        double retention = Held(state, coat);
        double aid = 0.0;
        double other = 0.0;
        for (int content = 0; content < _layout.Contents; content++)
        {
            if (Holds.GramsEach[content] > 0.0)
            {
                double stays = retention * Holds.Solid(content, share * state[trough + content], flow);
                rates[receiver + content] -= stays;
                rates[held + content] += stays;
                aid += content == Holds.FilterAid ? stays : 0.0;
                other += content == Holds.FilterAid ? 0.0 : stays * Holds.GramsEach[content];
            }
        }

        double grains = Holds.Coat.GrainLitres(aid) + Holds.Cake.GrainLitres(other);
        double laid = LaidDown(state, coat) * flow;
        double soaking = Soaking(water, flow - laid, state);
        double pores = Math.Max(0.0, laid - grains);
        double kept = grains + pores + soaking;
        rates[_layout.Filtered(_index)] = flow - kept;
        rates[_layout.Pores(_index)] += pores + soaking;
        rates[_layout.Volume(FiltrateTo.Index)] -= kept;
        rates[_layout.Heat(FiltrateTo.Index)] -= kept * TroughCelsius(state);
        Dissolved(pores + Math.Max(0.0, soaking), state[_layout.Volume(Trough.Index)], trough, receiver, held, state, rates);
        Dissolved(Math.Max(0.0, -soaking), state[_layout.Pores(_index)], held, held, receiver, state, rates);
    }

    /// <summary>What is dissolved in so many L/s, of a water that is so many litres, goes from one place to another.</summary>
    private void Dissolved(double flow, double litres, int strength, int from, int to, ReadOnlySpan<double> state, Span<double> rates)
    {
        if (flow <= 0.0 || litres <= 0.0)
        {
            return;
        }

        double share = flow / litres;
        for (int content = 0; content < _layout.Contents; content++)
        {
            if (Holds.GramsEach[content] == 0.0)
            {
                double amount = share * state[strength + content];
                rates[from + content] -= amount;
                rates[to + content] += amount;
            }
        }
    }

    /// <summary>The coat has a crack down to the cloth.</summary>
    public void Crack(bool cracked) => _coat.IsCracked = cracked;

    public double NextKink(double time) =>
        Math.Min(SealWater?.NextKink(time) ?? double.PositiveInfinity, Math.Min(TurnedBy.NextKink(time), VacuumBy.NextKink(time)));

    /// <summary>Without vacuum coat and cake slide back into the trough; before any was pulled there is none.</summary>
    private void Fall(ReadOnlySpan<double> state, Span<double> rates)
    {
        double weak = Math.Clamp(1.0 - (VacuumPascals(state) / Description.FallsBelowPascals), 0.0, 1.0) / FallsInSeconds;
        if (weak == 0.0)
        {
            return;
        }

        for (int content = 0; content < _layout.Contents; content++)
        {
            double fallen = weak * state[_layout.Held(_index) + content];
            rates[_layout.Held(_index) + content] -= fallen;
            rates[_layout.Mixed(Trough.Index) + content] += fallen;
        }

        double litres = weak * Holds.HeldLitres(state);
        rates[_layout.Pores(_index)] -= weak * state[_layout.Pores(_index)];
        rates[_layout.Volume(Trough.Index)] += litres;
        rates[_layout.Heat(Trough.Index)] += litres * TroughCelsius(state);
    }

    private void Cut(double time, double coat, LayerWater water, ReadOnlySpan<double> state, Span<double> rates)
    {
        double cakeGrams = Holds.CakeGrams(state);
        double cake = CakeMetres(cakeGrams);
        double beyond = BeyondKnifeMetres(coat + cake, state);
        if (beyond <= 0.0)
        {
            return;
        }

        double turns = TurnedBy.Effect(time) / Description.TurnSeconds;
        double ofCake = cake > 0.0 ? Math.Min(1.0, beyond / cake) * turns : 0.0;
        double ofCoat = coat > 0.0 ? Math.Max(0.0, beyond - cake) / coat * turns : 0.0;
        int held = _layout.Held(_index);
        for (int content = 0; content < _layout.Contents; content++)
        {
            if (Holds.GramsEach[content] > 0.0)
            {
                double taken = (content == Holds.FilterAid ? ofCoat : ofCake) * state[held + content];
                rates[held + content] -= taken;
                rates[_layout.WentOut + 1 + content] += taken;
                rates[_layout.Skimmed(_index) + (content == Holds.FilterAid ? 0 : 1)] += taken * Holds.GramsEach[content];
            }
        }

        // As much wetter or drier than it will be as the whole coat and cake are.
        double pores = state[_layout.Pores(_index)];
        double litres = water.OnDrum > 0.0 ? Math.Max(0.0, pores) / water.OnDrum * ((ofCoat * water.CoatAtKnife) + (ofCake * water.CakeAtKnife)) : 0.0;
        double grains = (ofCoat * Holds.Coat.GrainLitres(Holds.CoatGrams(state))) + (ofCake * Holds.Cake.GrainLitres(cakeGrams));
        rates[_layout.Pores(_index)] -= litres;
        rates[_layout.Skimmed(_index) + 2] += litres;
        rates[_layout.WentOut] += litres + grains;
        Dissolved(litres, pores, held, held, _layout.WentOut + 1, state, rates);
    }

    /// <summary>How far what is on the drum reaches beyond its knife; below nothing where the knife does not touch it.</summary>
    public double BeyondKnifeMetres(ReadOnlySpan<double> state) => BeyondKnifeMetres(Holds.CoatMetres(state) + CakeMetres(Holds.CakeGrams(state)), state);

    private double BeyondKnifeMetres(double thickness, ReadOnlySpan<double> state) => thickness - Knife.LevelMetres(state[_layout.Volume(Knife.Index)]);

    private double CakeMetres(double grams) => Holds.Cake.Litres(grams) / LitresPerCubicMetre / Description.AreaSquareMetres;

    private LayerWater Water(double time, ReadOnlySpan<double> state) =>
        LayerWater.Of(Description, Holds, _coat, VacuumPascals(state), WaterProperties.Viscosity(TroughCelsius(state)), TurnSeconds(time), state);

    /// <summary>L/s that soak into pores that want water, no faster than it comes through; less than none where they drain.</summary>
    private double Soaking(LayerWater water, double through, ReadOnlySpan<double> state)
    {
        double wanted = (water.OnDrum - state[_layout.Pores(_index)]) / Description.TurnSeconds;
        return wanted <= 0.0 ? wanted : wanted * through / (wanted + through);
    }

    /// <summary>The share of solids that stays: what coat and cloth hold back, as far as there is filtrate to leave it.</summary>
    private double Held(ReadOnlySpan<double> state, double coat)
    {
        double retention = _coat.Retention(coat);
        (double aid, double other) = Holds.Solids(state, retention);
        double litres = Holds.Coat.Litres(aid) + Holds.Cake.Litres(other);
        return litres > MostLaidDown ? retention * MostLaidDown / litres : retention;
    }

    /// <summary>Litres that stay on the drum, solids and the water between them, of a litre that is drawn.</summary>
    private double LaidDown(ReadOnlySpan<double> state, double coat)
    {
        (double aid, double other) = Holds.Solids(state, Held(state, coat));
        return Holds.Coat.Litres(aid) + Holds.Cake.Litres(other);
    }

    private double TroughCelsius(ReadOnlySpan<double> state) => state[_layout.Heat(Trough.Index)] / state[_layout.Volume(Trough.Index)];

    private double Flux(FilterCake cake, double viscosity, double resistance, double pressure, double turn) =>
        RotaryDrum.Flux(cake, viscosity, resistance, pressure, Description.Submerged, turn);

    private double TurnSeconds(double time) => Description.TurnSeconds / Math.Max(Slowest, TurnedBy.Effect(time));

    /// <summary>What the trough's water leaves in a pass: filter aid and other solids in layers of their own resistance, one behind the other.</summary>
    private FilterCake FreshCake(ReadOnlySpan<double> state, double pressure, double coat)
    {
        (double aid, double other) = Holds.Solids(state, Held(state, coat));
        double aidResistance = FilterCake.ResistanceOf(Description.CoatSquareMetres, Description.CoatKilogramsPerCubicMetre);
        double all = aid + other;
        double filtrate = 1.0 - Holds.Coat.Litres(aid) - Holds.Cake.Litres(other);
        return all > 0.0
            ? new FilterCake(((aidResistance * aid) + (_coat.CakeResistance(pressure) * other)) / all, all / filtrate)
            : new FilterCake(aidResistance, 0.0);
    }
}
