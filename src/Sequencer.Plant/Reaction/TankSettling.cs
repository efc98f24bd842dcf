using Sequencer.Plant.Description;
using Sequencer.Plant.Hydraulics;
using Sequencer.Plant.Settling;

namespace Sequencer.Plant.Reaction;

/// <summary>
/// Solids that settle in a tank. From the surface down there are clear water (V_c litres), water in which flocs settle (V_s) and a bed of what has settled
/// (V_b = its solids / bed density). Solids that are in no floc are everywhere above the bed and do not settle. With the agitator's speed s, c g/L of solids
/// in flocs, v their velocity and A the tank's cross-section:
/// <code>
/// interface:  dV_c/dt = v A (1 - m) - m V_c / tau          m = min(1, s / 0.2): from a fifth of its speed on an agitator keeps everything up
/// bed:        dB/dt = c v A (1 - m) / (1 - c / c_b) - m B / tau
/// velocity:   v = v_0 (1 - c / c_f)^4.65,  v_0 = g d^2 (c_f (1 - rho / rho_s)) / (18 mu)   (Richardson and Zaki; Stokes)
/// flocs:      see <see cref="Flocculation"/>, with G = sqrt(P s^3 / (mu V)) (Camp and Stein)
/// </code>
/// c stays the same while an interface falls (Kynch, Trans. Faraday Soc. 48 (1952) 166, below the greatest flux); the bed does not thicken (our own simplification).
/// A line draws from a band around its height. A pump breaks flocs: what comes in counts as in none. What the water dissolves does not settle (<see cref="Solubility"/>); what lies on the floor
/// stays solid until it is stirred up.
/// </summary>
internal sealed class TankSettling
{
    /// <summary>m above and below the height at which a line draws, from which the water comes (our own choice).</summary>
    private const double BandMetres = 0.05;

    /// <summary>Share of its speed from which on an agitator lets nothing settle (our own choice).</summary>
    private const double KeepsUpFrom = 0.2;

    /// <summary>Of the tank's volume: where less than this is left between clear water and bed, settling ends.</summary>
    private const double Last = 1e-3;

    /// <summary>m; a size that no floc is below.</summary>
    private const double SmallestFloc = 2e-6;

    /// <summary>L; no tank of a plant gets as far.</summary>
    private const double LeastLitres = 1e-3;

    /// <summary>s; how soon flocs are gone whose solids the chemistry has dissolved (our own choice).</summary>
    private const double GoneInSeconds = 20.0;

    private const double LitresPerCubicMetre = 1000.0;
    private const double WattsPerKilowatt = 1000.0;

    private readonly SettlingDescription _description;
    private readonly TankBody _tank;
    private readonly StateLayout _layout;
    private readonly Solubility _solubility;
    private readonly double[] _grams;
    private readonly int _index;
    private readonly int _dissolved;

    public TankSettling(SettlingDescription description, TankBody tank, int index, ContentLayout contents, StateLayout layout, Solubility solubility)
    {
        _description = description;
        _tank = tank;
        _index = index;
        _layout = layout;
        _solubility = solubility;
        _grams = SolidWeights.Of(contents, description.Retained);
        _dissolved = contents.Dissolved.Length;
    }

    public int Tank => _tank.Index;

    public static double StartSize => SmallestFloc;

    /// <summary>Litres of settled solids and the water between them.</summary>
    public double BedLitres(ReadOnlySpan<double> state) => BedGrams(state) / _description.BedGramsPerLitre;

    /// <summary>Grams of solids that a litre holds where a line draws.</summary>
    public double SolidsDrawn(DrawPoint point, ReadOnlySpan<double> state)
    {
        Zones zones = ZonesOf(state);
        (double clear, double middle, double bed) = Shares(point, zones);
        return ((clear + middle) * zones.Dispersed) + (middle * zones.Flocs) + (bed * _description.BedGramsPerLitre);
    }

    /// <summary>How large the flocs are.</summary>
    public double FlocMetres(ReadOnlySpan<double> state) => Math.Max(SmallestFloc, state[_layout.FlocSize(_index)]);

    /// <summary>Solids in no floc.</summary>
    public double DispersedGramsPerLitre(ReadOnlySpan<double> state) => ZonesOf(state).Dispersed;

    /// <summary>m above the floor, of the surface of what settles.</summary>
    public double InterfaceMetres(ReadOnlySpan<double> state)
    {
        Zones zones = ZonesOf(state);
        return _tank.LevelMetres(zones.Litres - zones.Clear);
    }

    /// <summary>Adds what so many L/s that are drawn take of each content, from here to a place.</summary>
    public void Draw(DrawPoint point, double flow, int target, ReadOnlySpan<double> state, Span<double> rates)
    {
        Zones zones = ZonesOf(state);
        (double clear, double middle, double bed) = Shares(point, zones);
        int mixed = _layout.Mixed(Tank);
        int onFloor = _layout.Bed(_index);
        double share = flow / zones.Litres;
        double above = zones.Suspended > 0.0 ? flow * (((clear + middle) * zones.Dispersed) + (middle * zones.Flocs)) / zones.Suspended : 0.0;
        double below = zones.Bed > 0.0 ? flow * bed / zones.Bed : 0.0;
        for (int content = 0; content < _grams.Length; content++)
        {
            double solid = Solid(content, zones, state);
            double amount = (above * solid) + (share * (state[mixed + content] - solid));
            double settled = _grams[content] > 0.0 ? below * state[onFloor + content] : 0.0;
            rates[mixed + content] -= amount;
            rates[onFloor + content] -= settled;
            rates[target + content] += amount + settled;
        }

        rates[_layout.Clear(_index)] -= flow * clear;
        rates[_layout.Flocs(_index)] -= flow * middle * zones.Flocs;
    }

    /// <summary>Settling, stirring up and flocculation.</summary>
    public void AddRates(double time, ReadOnlySpan<double> state, Span<double> rates)
    {
        Zones zones = ZonesOf(state);
        double speed = _tank.Agitator?.Effect(time) ?? 0.0;
        double keptUp = Math.Min(1.0, speed / KeepsUpFrom);
        double viscosity = WaterProperties.Viscosity(state[_layout.Heat(Tank)] / zones.Litres);
        Flocculate(zones, speed, viscosity, state, rates);
        Dissolve(zones, state, rates);
        StirUp(keptUp / _tank.Description.Mixing.LagSeconds, state, rates);
        if (keptUp < 1.0)
        {
            Settle((1.0 - keptUp) * Velocity(zones, viscosity, state), zones, state, rates);
        }
    }

    private double Velocity(Zones zones, double viscosity, ReadOnlySpan<double> state)
    {
        double size = FlocMetres(state);
        double heavier = _description.FlocGramsPerLitre * (1.0 - (WaterProperties.Density / _description.GrainKilogramsPerCubicMetre));
        double left = zones.Middle / (zones.Middle + (Last * zones.Litres));
        return HinderedSettling.Alone(size, heavier, viscosity) * HinderedSettling.Crowded(1.0 - (zones.Flocs / _description.FlocGramsPerLitre)) * left;
    }

    private void Settle(double velocity, Zones zones, ReadOnlySpan<double> state, Span<double> rates)
    {
        double litres = velocity * _tank.AreaSquareMetres(zones.Litres) * LitresPerCubicMetre;
        double grams = zones.Flocs * litres / Math.Max(0.1, 1.0 - (zones.Flocs / _description.BedGramsPerLitre));
        rates[_layout.Clear(_index)] += litres;
        rates[_layout.Flocs(_index)] -= grams;
        double share = zones.Suspended > 0.0 ? grams / zones.Suspended : 0.0;
        int mixed = _layout.Mixed(Tank);
        int onFloor = _layout.Bed(_index);
        for (int content = 0; content < _grams.Length; content++)
        {
            double amount = share * Solid(content, zones, state);
            rates[mixed + content] -= amount;
            rates[onFloor + content] += amount;
        }
    }

    private void StirUp(double rate, ReadOnlySpan<double> state, Span<double> rates)
    {
        int mixed = _layout.Mixed(Tank);
        int onFloor = _layout.Bed(_index);
        for (int content = 0; content < _grams.Length; content++)
        {
            double amount = rate * state[onFloor + content];
            rates[onFloor + content] -= amount;
            rates[mixed + content] += amount;
            rates[_layout.Flocs(_index)] += amount * _grams[content];
        }

        rates[_layout.Clear(_index)] -= rate * state[_layout.Clear(_index)];
    }

    private void Flocculate(Zones zones, double speed, double viscosity, ReadOnlySpan<double> state, Span<double> rates)
    {
        double watts = WattsPerKilowatt * _tank.Description.Mixing.PowerKilowatts * speed * speed * speed;
        if (watts <= 0.0 || zones.Suspended <= 0.0)
        {
            return;
        }

        double shear = MixingIntensity.Gradient(watts, viscosity, zones.Litres / LitresPerCubicMetre);
        int mixed = _layout.Mixed(Tank);
        double hydroxide = _solubility.Grams(Tank, state.Slice(mixed, _dissolved), _grams.AsSpan(0, _dissolved), zones.Litres);
        double sticking = Flocculation.Sticking(hydroxide, zones.Suspended - hydroxide);
        double grams = state[_layout.Flocs(_index)];
        rates[_layout.Flocs(_index)] += zones.Suspended * Flocculation.Rate(grams / zones.Suspended, sticking, shear, _description.BreakingSeconds);
        double share = zones.Suspended / zones.Litres / _description.FlocGramsPerLitre;
        rates[_layout.FlocSize(_index)] += Flocculation.Growth(FlocMetres(state), _description.FlocMetres, share, sticking, shear);
    }

    /// <summary>Flocs whose solids have dissolved are gone, and what is left of them is smaller.</summary>
    private void Dissolve(Zones zones, ReadOnlySpan<double> state, Span<double> rates)
    {
        double grams = state[_layout.Flocs(_index)];
        double gone = grams - zones.Suspended;
        if (gone > 0.0)
        {
            rates[_layout.Flocs(_index)] -= gone / GoneInSeconds;
            rates[_layout.FlocSize(_index)] -= gone / grams / GoneInSeconds * (FlocMetres(state) - SmallestFloc);
        }
    }

    /// <summary>All that lies on the floor settled there as a solid.</summary>
    private double BedGrams(ReadOnlySpan<double> state)
    {
        double sum = 0.0;
        int onFloor = _layout.Bed(_index);
        for (int content = 0; content < _grams.Length; content++)
        {
            sum += Math.Max(0.0, state[onFloor + content]) * _grams[content];
        }

        return sum;
    }

    /// <summary>What of a content that does not lie is solid; none of what is dissolved here.</summary>
    private double Solid(int content, Zones zones, ReadOnlySpan<double> state) =>
        _grams[content] > 0.0 ? _solubility.Solid(Tank, content, state[_layout.Mixed(Tank) + content], zones.Litres) : 0.0;

    private Zones ZonesOf(ReadOnlySpan<double> state)
    {
        // A step that is only tried may draw more than there is; its error then lets it be thrown away.
        double litres = Math.Max(LeastLitres, state[_layout.Volume(Tank)]);
        double bed = Math.Min(BedLitres(state), 0.999 * litres);
        double clear = Math.Clamp(state[_layout.Clear(_index)], 0.0, litres - bed);
        double suspended = _solubility.Grams(Tank, state.Slice(_layout.Mixed(Tank), _grams.Length), _grams, litres);
        double flocs = Math.Clamp(state[_layout.Flocs(_index)], 0.0, suspended);
        double middle = litres - bed - clear;
        return new Zones(litres, clear, middle, bed, suspended, (suspended - flocs) / (litres - bed), flocs / Math.Max(middle, Last * litres));
    }

    /// <summary>Shares of clear water, settling water and bed in what is drawn.</summary>
    private (double Clear, double Middle, double Bed) Shares(DrawPoint point, Zones zones)
    {
        double depth = _tank.LevelMetres(zones.Litres);
        double height = point.Height(depth);
        double low = Math.Max(0.0, height - BandMetres);
        double high = Math.Max(low + (0.1 * BandMetres), Math.Min(depth, height + BandMetres));
        double bedTop = _tank.LevelMetres(zones.Bed);
        double clearFrom = _tank.LevelMetres(zones.Litres - zones.Clear);
        double bed = Math.Clamp((bedTop - low) / (high - low), 0.0, 1.0);
        double clear = Math.Clamp((high - clearFrom) / (high - low), 0.0, 1.0 - bed);
        return (clear, 1.0 - bed - clear, bed);
    }

    /// <summary>Litres of all, of clear water, of settling water and of the bed; grams that do not lie; g/L of solids in no floc, and of flocs where they settle.</summary>
    private readonly record struct Zones(double Litres, double Clear, double Middle, double Bed, double Suspended, double Dispersed, double Flocs);
}
