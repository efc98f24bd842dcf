using System.Collections.Immutable;
using Sequencer.Plant.Description;

namespace Sequencer.Plant.Hydraulics;

/// <summary>A line of the description with the running things it is made of.</summary>
/// <param name="Description">as described</param>
/// <param name="Drives">the pumps and valves in it</param>
/// <param name="OtherWays">the valves that lead its water elsewhere when open</param>
/// <param name="FromTank">index of the tank it draws from; -1 for a source</param>
/// <param name="FromSource">index of the source it draws from; -1 for a tank</param>
/// <param name="ToTank">index of the tank it feeds; -1 for outside</param>
/// <param name="DosingLine">index of its dosing line; -1 for none</param>
/// <param name="DeadTimeSeconds">between leaving the pump and reaching the mixing zone; 0 for waters that mix as they come</param>
internal sealed record Pipe(
    LineDescription Description,
    ImmutableArray<Drive> Drives,
    ImmutableArray<Drive> OtherWays,
    int FromTank,
    int FromSource,
    int ToTank,
    int DosingLine,
    double DeadTimeSeconds)
{
    /// <summary>1 clear, 0 blocked; null until it is first blocked.</summary>
    private Ramp? _clear;

    /// <summary>From then on its opening is one number: lines are asked in each scan, and mostly nothing in them moves.</summary>
    private double _restsFrom = double.PositiveInfinity;
    private double _openingAtRest;
    private bool _followsDrives;

    /// <summary>Reagents and whatever comes through a dosing line find their way into the bulk slowly.</summary>
    public bool IsDosed { get; init; }

    /// <summary>The pump and pipe that tell its flow; null for another line.</summary>
    public PumpedLine? Pumped { get; } = Description.Pumped is { } pumped ? new PumpedLine(pumped) : null;

    /// <summary>Its own control by level; null where it has none.</summary>
    public LevelControl? ByLevel { get; } = Description.ByLevel is { } control ? new LevelControl(control) : null;

    /// <summary>L/s with the level above the floor of the tank that it draws from, where its pump and pipe tell it.</summary>
    public double PumpedFlow(PumpedLine line, double time, double levelMetres)
    {
        double speed = 1.0;
        double opening = 1.0;
        foreach (Drive drive in Drives)
        {
            if (drive.Description.Kind == DriveKind.Valve)
            {
                opening = Math.Min(opening, drive.Effect(time));
            }
            else
            {
                speed = Math.Min(speed, drive.Effect(time));
            }
        }

        foreach (Drive valve in OtherWays)
        {
            opening = Math.Min(opening, 1.0 - valve.Effect(time));
        }

        opening = _clear is null ? opening : Math.Min(opening, _clear.Value(time));
        return line.Flow(speed, opening, levelMetres);
    }

    /// <summary>The least opened of its drives, or what the most opened of the other ways leaves, 0 to 1.</summary>
    public double Opening(double time)
    {
        if (time >= _restsFrom)
        {
            return _openingAtRest;
        }

        double opening = OpeningAt(time);
        KeepRest(time);
        return opening;
    }

    private void KeepRest(double time)
    {
        if (!_followsDrives)
        {
            _followsDrives = true;
            foreach (Drive drive in Drives.Concat(OtherWays))
            {
                drive.Changed += () => _restsFrom = double.PositiveInfinity;
            }
        }

        double rests = _clear?.RestsFrom ?? double.NegativeInfinity;
        foreach (Drive drive in Drives)
        {
            rests = Math.Max(rests, drive.RestsFrom);
        }

        foreach (Drive valve in OtherWays)
        {
            rests = Math.Max(rests, valve.RestsFrom);
        }

        if (time >= rests)
        {
            (_restsFrom, _openingAtRest) = (rests, OpeningAt(time));
        }
    }

    private double OpeningAt(double time)
    {
        double opening = 1.0;
        foreach (Drive drive in Drives)
        {
            opening = Math.Min(opening, drive.Effect(time));
        }

        foreach (Drive valve in OtherWays)
        {
            opening = Math.Min(opening, 1.0 - valve.Effect(time));
        }

        return _clear is null ? opening : Math.Min(opening, _clear.Value(time));
    }

    /// <summary>Nothing passes it, or all as before.</summary>
    /// <param name="time">from then on</param>
    /// <param name="blocked">or clear</param>
    /// <param name="keptSeconds">how long its past may be asked for</param>
    public void Block(double time, bool blocked, double keptSeconds)
    {
        (_clear ??= new Ramp(1.0, keptSeconds)).MoveTo(time, blocked ? 0.0 : 1.0, Ramp.AtOnce);
        _restsFrom = double.PositiveInfinity;
    }

    public double NextKink(double time)
    {
        double next = _clear?.NextKink(time) ?? double.PositiveInfinity;
        foreach (Drive drive in Drives)
        {
            next = Math.Min(next, drive.NextKink(time));
        }

        foreach (Drive valve in OtherWays)
        {
            next = Math.Min(next, valve.NextKink(time));
        }

        return next;
    }
}
