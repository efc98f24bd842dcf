using Sequencer.Plant.Description;

namespace Sequencer.Plant.Hydraulics;

/// <summary>A tank of the description, its agitator, and which of its limits it stands at.</summary>
internal sealed class TankBody(TankDescription description, Drive? agitator, Blower? blower, int index)
{
    private const double LitresPerCubicMetre = 1000.0;
    private const double SecondsPerHour = 3600.0;

    /// <summary>Of what it holds at its rim, what a full tank loses in an hour through its hole (our own choice).</summary>
    private const double LostAnHour = 0.1;

    /// <summary>How open its hole is; null until it first leaks.</summary>
    private Ramp? _hole;

    public TankDescription Description { get; } = description;

    public Drive? Agitator { get; } = agitator;

    /// <summary>That brings air into it; null where none does.</summary>
    public Blower? Blower { get; } = blower;

    public int Index { get; } = index;

    /// <summary>s; since when it stands at its rim, where what comes in beyond what is drawn runs over. Infinity where it does not. Steps go ahead: it may be a time to come.</summary>
    public double FullFrom { get; set; } = double.PositiveInfinity;

    /// <summary>s; since when it stands at its heel, where no more is drawn than comes in, as <see cref="FullFrom"/>.</summary>
    public double DrawnDownFrom { get; set; } = double.PositiveInfinity;

    /// <summary>Where the steps have come to it stands at its rim.</summary>
    public bool IsFull => FullFrom < double.PositiveInfinity;

    /// <summary>Where the steps have come to it stands at its heel.</summary>
    public bool IsDrawnDown => DrawnDownFrom < double.PositiveInfinity;

    public bool HasHole => _hole is not null;

    /// <summary>Above the floor: along the table of levels, and above it by the cross-section.</summary>
    public double LevelMetres(double litres)
    {
        LevelPoint below = default;
        foreach (LevelPoint point in Description.Levels)
        {
            if (litres < point.Litres)
            {
                return below.Metres + ((litres - below.Litres) * (point.Metres - below.Metres) / (point.Litres - below.Litres));
            }

            below = point;
        }

        return below.Metres + ((litres - below.Litres) / LitresPerCubicMetre / Description.AreaSquareMetres);
    }

    /// <summary>Mean cross-section about the surface.</summary>
    public double AreaSquareMetres(double litres)
    {
        LevelPoint below = default;
        foreach (LevelPoint point in Description.Levels)
        {
            if (litres < point.Litres)
            {
                return (point.Litres - below.Litres) / LitresPerCubicMetre / (point.Metres - below.Metres);
            }

            below = point;
        }

        return Description.AreaSquareMetres;
    }

    /// <summary>1 over the time constant of mixing in, between agitated and not, and by air, 1/s.</summary>
    public double MixingRate(double time, double litres)
    {
        double agitated = Agitator?.Effect(time) ?? 1.0;
        double rate = (agitated / Description.Mixing.LagSeconds) + ((1.0 - agitated) / Description.Mixing.UnmixedLagSeconds);
        return Blower is { } air ? rate + (air.Share(time, LevelMetres(litres)) / air.Description.LagSeconds) : rate;
    }

    /// <summary>Time constant of carbon dioxide between water and air, s: of the surface, and beside it in proportion to what is blown in; infinity where there is neither.</summary>
    public double AirSeconds(double time, double litres)
    {
        double surface = Description.AirSeconds ?? double.PositiveInfinity;
        return Blower is { } air ? 1.0 / ((1.0 / surface) + (air.Share(time, LevelMetres(litres)) / air.Description.EqualisesSeconds)) : surface;
    }

    /// <summary>It gets a hole in its floor, or is mended.</summary>
    public void Leak(double time, bool leaks) => (_hole ??= new Ramp(0.0, 0.0)).MoveTo(time, leaks ? 1.0 : 0.0, Ramp.AtOnce);

    /// <summary>L/s through its hole: with the square root of the level, as through any (Torricelli).</summary>
    public double LeakFlow(double time, double litres)
    {
        double full = Description.OverflowLitres;
        return _hole is null ? 0.0 : _hole.Value(time) * LostAnHour * full / SecondsPerHour * Math.Sqrt(Math.Max(0.0, LevelMetres(litres)) / LevelMetres(full));
    }

    public double NextKink(double time)
    {
        double driven = Math.Min(Agitator?.NextKink(time) ?? double.PositiveInfinity, Blower?.NextKink(time) ?? double.PositiveInfinity);
        return _hole is null ? driven : Math.Min(driven, _hole.NextKink(time));
    }
}
