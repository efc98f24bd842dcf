using System.Collections.Immutable;
using Sequencer.Plant.Description;
using Sequencer.Plant.Filtration;
using Sequencer.Plant.Hydraulics;

namespace Sequencer.Plant.Reaction;

/// <summary>
/// A filter press's equations. With H litres in its chambers of V, w kg of dry solids on a m2 of cloth, the feed q_0 without pressure and the viscosity mu:
/// <code>
/// filling:   q = q_0 until the chambers are full (f = 0 to 1 over their last fiftieth)
/// pressing:  q = q_0 (1 - p / p_max) = k A p / (mu (alpha_0 p^s w + R)), see <see cref="FedCake"/>; k falls from 1 to 0 as cake fills the last twentieth of V
/// filtrate:  f q; of the solids that come with it 1 - (1 - h) exp(-L / L_0) stay
/// squeezing: q = min(what pressure drives through the cake, (W - W_s) / tau), W_s the water of a squeezed cake, tau of <see cref="Expression"/>
/// opened:    what is in it falls out, e times less in 20 s
/// </code>
/// All solids that come in count as cake at once, and the water in it is one mixed volume (our own simplifications). It is as warm as the tank that feeds it.
/// </summary>
internal sealed class FilterPress : ISeparator
{
    private const double LitresPerCubicMetre = 1000.0;

    /// <summary>Share of its chambers from which on filtrate comes (our own choice: nothing jumps).</summary>
    private const double FiltersFrom = 0.98;

    /// <summary>Share of its chambers that is left to cake when the feed begins to be choked (our own choice).</summary>
    private const double ChokesFrom = 0.05;

    /// <summary>How soon cakes fall (our own choice).</summary>
    private const double DropsInSeconds = 20.0;

    /// <summary>Water leaves no faster than e times in so many seconds, where hardly any solids hold it (our own choice).</summary>
    private const double LeastSqueezeSeconds = 5.0;

    /// <summary>Share of what comes in that goes through a torn cloth as it is (our own choice).</summary>
    private const double TornShare = 0.05;

    /// <summary>Resistance of a blinded cloth over that of a clean one (our own choice).</summary>
    private const double BlindedFactor = 50.0;

    private readonly StateLayout _layout;
    private readonly Solubility _solubility;
    private readonly ImmutableArray<Drive> _feeds;
    private readonly Drive? _squeeze;
    private readonly Drive _opener;
    private readonly int _index;
    private readonly double[] _arrived;
    private bool _isTorn;
    private bool _isBlinded;
    private bool _isBurst;

    public FilterPress(PressDescription description, int index, PlantParts parts, TankBody from, TankBody filtrateTo)
    {
        Description = description;
        Trough = from;
        FiltrateTo = filtrateTo;
        _feeds = [.. description.Through.Select(parts.Drive)];
        _squeeze = description.Squeeze is { } squeeze ? parts.Drive(squeeze.Valve) : null;
        _opener = parts.Drive(description.OpenedBy);
        _index = index;
        _layout = parts.Layout;
        _solubility = parts.Solubility;
        _arrived = new double[parts.Contents.Count];
        Holds = new PressHolds(description, index, parts.Contents, parts.Layout);
    }

    public PressDescription Description { get; }

    public TankBody Trough { get; }

    public TankBody FiltrateTo { get; }

    /// <summary>What is in it, read from a state.</summary>
    public PressHolds Holds { get; }

    public void Tear(bool torn) => _isTorn = torn;

    public void Blind(bool blinded) => _isBlinded = blinded;

    /// <summary>Its membranes hold no pressure.</summary>
    public void Burst(bool burst) => _isBurst = burst;

    public double NextKink(double time)
    {
        double next = Math.Min(_opener.NextKink(time), _squeeze?.NextKink(time) ?? double.PositiveInfinity);
        foreach (Drive feed in _feeds)
        {
            next = Math.Min(next, feed.NextKink(time));
        }

        return next;
    }

    /// <summary>Pa above the air's, at its feed or of its membranes, whichever is more.</summary>
    public double PressurePascals(double time, ReadOnlySpan<double> state) =>
        Math.Max(Fullness(state) * Filtering(time, state).Pascals, Squeezing(time) * (Description.Squeeze?.Pascals ?? 0.0));

    public double WantedFlow(double time, ReadOnlySpan<double> state)
    {
        double full = Fullness(state);
        return ((1.0 - full) * Feed(time)) + (full * Filtering(time, state).Litres);
    }

    public double Filtrate(double time, double drawn, ReadOnlySpan<double> state) => Filtered(time, drawn, state) + Squeezed(time, state);

    public void AddRates(double time, double flow, TankTransfer transfer, ReadOnlySpan<double> state, Span<double> rates)
    {
        int receiver = _layout.Mixed(FiltrateTo.Index);
        rates.Slice(receiver, _arrived.Length).CopyTo(_arrived);
        transfer.AddRates(Trough.Index, DrawPoint.Floor, FiltrateTo.Index, flow, state, rates);
        for (int content = 0; content < _arrived.Length; content++)
        {
            _arrived[content] = rates[receiver + content] - _arrived[content];
        }

        double filtered = Filtered(time, flow, state);
        double given = filtered + Squeezed(time, state);
        double celsius = state[_layout.Heat(Trough.Index)] / state[_layout.Volume(Trough.Index)];
        rates[_layout.Volume(FiltrateTo.Index)] += given - flow;
        rates[_layout.Heat(FiltrateTo.Index)] += (given - flow) * celsius;
        rates[_layout.PressFiltered(_index)] = given;
        double grains = Keep(flow, filtered, given, receiver, state, rates);
        rates[_layout.PressWater(_index)] += flow - given - grains;
        Drop(_opener.Effect(time), state, rates);
    }

    /// <summary>
    /// Solids stay but for what passes the cloth; what is dissolved leaves with the water of the chambers. Of what it holds as solid the dissolved part goes by with the filtrate, and counts as solid
    /// where its water stays. Litres of grains that stay.
    /// </summary>
    private double Keep(double flow, double filtered, double given, int receiver, ReadOnlySpan<double> state, Span<double> rates)
    {
        int held = _layout.PressHeld(_index);
        double passing = flow > 0.0 ? filtered / flow * (1.0 - Retention(state)) : 0.0;
        double water = Holds.WaterLitres(state);
        double leaving = water > 0.0 ? given / water : 0.0;
        double waterStays = flow > 0.0 ? Math.Max(0.0, 1.0 - (given / flow)) : 0.0;
        double grams = 0.0;
        for (int content = 0; content < _arrived.Length; content++)
        {
            bool isSolid = Holds.GramsEach[content] > 0.0;
            double solid = isSolid ? _solubility.Solid(Trough.Index, content, _arrived[content], flow) : 0.0;
            double stays = isSolid ? ((1.0 - passing) * solid) + (waterStays * (_arrived[content] - solid)) : _arrived[content] - (leaving * state[held + content]);
            rates[receiver + content] -= stays;
            rates[held + content] += stays;
            grams += isSolid ? stays * Holds.GramsEach[content] : 0.0;
        }

        return Holds.Cake.GrainLitres(grams);
    }

    private void Drop(double open, ReadOnlySpan<double> state, Span<double> rates)
    {
        double share = open / DropsInSeconds;
        if (share == 0.0)
        {
            return;
        }

        int held = _layout.PressHeld(_index);
        for (int content = 0; content < _arrived.Length; content++)
        {
            double fallen = share * state[held + content];
            rates[held + content] -= fallen;
            rates[_layout.WentOut + 1 + content] += fallen;
        }

        double water = share * state[_layout.PressWater(_index)];
        double grams = share * Holds.DryGrams(state);
        rates[_layout.PressWater(_index)] -= water;
        rates[_layout.WentOut] += water + Holds.Cake.GrainLitres(grams);
        rates[_layout.PressDropped(_index)] = grams;
        rates[_layout.PressDropped(_index) + 1] = water;
    }

    /// <summary>L/s of what is drawn that comes through as filtrate.</summary>
    private double Filtered(double time, double drawn, ReadOnlySpan<double> state)
    {
        double full = Fullness(state);
        double through = full * Filtering(time, state).Litres;
        double wanted = ((1.0 - full) * Feed(time)) + through;
        return wanted > 0.0 ? drawn * through / wanted : 0.0;
    }

    /// <summary>L/s that membranes press out.</summary>
    private double Squeezed(double time, ReadOnlySpan<double> state)
    {
        if (Description.Squeeze is not { } squeeze)
        {
            return 0.0;
        }

        double pressure = Squeezing(time) * squeeze.Pascals;
        double surplus = Holds.WaterLitres(state) - Holds.WaterAt(squeeze.CakeKilogramsPerCubicMetre, state);
        if (pressure <= 0.0 || surplus <= 0.0)
        {
            return 0.0;
        }

        double viscosity = Viscosity(state);
        double load = Holds.KilogramsPerSquareMetre(state);
        double driven = LitresPerCubicMetre * FedCake.Through(
            pressure, Description.AreaSquareMetres, viscosity, Description.CakeMetresPerKilogram * load, Description.CakeCompressibility, Medium);
        double coefficient = Expression.Coefficient(
            pressure,
            viscosity,
            FilterCake.ResistanceUnder(pressure, Description.CakeMetresPerKilogram, Description.CakeCompressibility),
            Description.CakeKilogramsPerCubicMetre,
            squeeze.CakeKilogramsPerCubicMetre);
        double seconds = Expression.Seconds(coefficient, load / Description.CakeKilogramsPerCubicMetre);
        return Math.Min(driven, surplus / Math.Max(LeastSqueezeSeconds, seconds));
    }

    /// <summary>Pa at the feed and L/s through cloth and cake, once the chambers are full.</summary>
    private (double Pascals, double Litres) Filtering(double time, ReadOnlySpan<double> state)
    {
        double feed = Feed(time);
        double room = Math.Clamp((1.0 - (Holds.CakeLitres(state) / Description.ChambersLitres)) / ChokesFrom, 0.0, 1.0);
        if (feed <= 0.0 || room <= 0.0)
        {
            return (feed > 0.0 ? Description.StallsAtPascals : 0.0, 0.0);
        }

        double pressure = FedCake.Pressure(
            feed / LitresPerCubicMetre,
            Description.StallsAtPascals,
            room * Description.AreaSquareMetres,
            Viscosity(state),
            Description.CakeMetresPerKilogram * Holds.KilogramsPerSquareMetre(state),
            Description.CakeCompressibility,
            Medium);
        return (pressure, feed * (1.0 - (pressure / Description.StallsAtPascals)));
    }

    /// <summary>L/s without pressure: none while membranes press.</summary>
    private double Feed(double time)
    {
        double opening = 1.0 - Squeezing(time);
        foreach (Drive feed in _feeds)
        {
            opening = Math.Min(opening, feed.Effect(time));
        }

        return opening * Description.FeedLitresPerSecond;
    }

    private double Squeezing(double time) => _isBurst ? 0.0 : _squeeze?.Effect(time) ?? 0.0;

    private double Fullness(ReadOnlySpan<double> state) =>
        Math.Clamp(((Holds.Litres(state) / Description.ChambersLitres) - FiltersFrom) / (1.0 - FiltersFrom), 0.0, 1.0);

    private double Retention(ReadOnlySpan<double> state)
    {
        double thickness = Holds.CakeLitres(state) / LitresPerCubicMetre / Description.AreaSquareMetres;
        double held = 1.0 - ((1.0 - Description.ClothHoldsBack) * Math.Exp(-thickness / Description.ClosesAtMetres));
        return _isTorn ? (1.0 - TornShare) * held : held;
    }

    private double Medium => Description.ClothPerMetre * (_isBlinded ? BlindedFactor : 1.0);

    private double Viscosity(ReadOnlySpan<double> state) =>
        WaterProperties.Viscosity(state[_layout.Heat(Trough.Index)] / state[_layout.Volume(Trough.Index)]);
}
