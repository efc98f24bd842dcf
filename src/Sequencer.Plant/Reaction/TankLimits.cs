using Sequencer.Plant.Hydraulics;
using Sequencer.Plant.Integration;

namespace Sequencer.Plant.Reaction;

/// <summary>Where tanks reach their rims and heels and leave them, as the last step tells: there the equations change.</summary>
internal sealed class TankLimits(PlantParts parts, SwitchingIntegrator integrator)
{
    /// <summary>s; how exactly a full or drawn-down tank is found.</summary>
    private const double EventTolerance = 1e-6;

    /// <summary>L below the rim, or above the heel, at which a tank counts as free again.</summary>
    private const double FreeAgain = 1e-3;

    /// <summary>Of its heel: a tank that holds less at the end of a step was meant to stop long before.</summary>
    private const double NearlyEmpty = 0.5;

    /// <summary>The first tank that reaches its rim or heel within the step; null where none does.</summary>
    public TankLimit? First()
    {
        TankLimit? first = null;
        foreach (TankBody tank in parts.Tanks)
        {
            int volume = parts.Layout.Volume(tank.Index);
            double rim = tank.Description.OverflowLitres;
            double heel = tank.Description.HeelLitres;
            if (!tank.IsFull && Reaches(time => integrator.Interpolate(time, volume) - rim) is { } full && !(first?.Time <= full))
            {
                first = new TankLimit(tank, full, IsRim: true);
            }

            if (!tank.IsDrawnDown && Reaches(time => heel - integrator.Interpolate(time, volume)) is { } drawn && !(first?.Time <= drawn))
            {
                first = new TankLimit(tank, drawn, IsRim: false);
            }
        }

        return first;
    }

    /// <summary>
    /// The equations have no meaning for a tank without water. A step that goes nearly there or beyond tells little of what comes before it either: it is
    /// to be done again, up to the heel.
    /// </summary>
    public bool NearlyEmptiesATank()
    {
        foreach (TankBody tank in parts.Tanks)
        {
            if (!tank.IsDrawnDown && integrator.State[parts.Layout.Volume(tank.Index)] < NearlyEmpty * tank.Description.HeelLitres)
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>Tanks that have left their rim or heel. A step that is cut may end before a tank was let go: that one is at its limit again.</summary>
    public void LetGo()
    {
        foreach (TankBody tank in parts.Tanks)
        {
            double litres = integrator.State[parts.Layout.Volume(tank.Index)];
            double rim = tank.Description.OverflowLitres;
            double heel = tank.Description.HeelLitres;
            tank.FullFrom = Since(tank.FullFrom, litres >= rim || (tank.IsFull && litres > rim - FreeAgain));
            tank.DrawnDownFrom = Since(tank.DrawnDownFrom, litres <= heel || (tank.IsDrawnDown && litres < heel + FreeAgain));
        }
    }

    private double Since(double before, bool isThere) => isThere ? Math.Min(before, integrator.End) : double.PositiveInfinity;

    /// <summary>When a function rises through zero within the last step; a dip and return within a quarter step is not seen.</summary>
    private double? Reaches(Func<double, double> function)
    {
        const int Parts = 4;
        double start = integrator.Start;
        for (int part = 1; part <= Parts; part++)
        {
            double end = part == Parts ? integrator.End : integrator.Start + ((integrator.End - integrator.Start) * part / Parts);
            if (function(start) < 0.0 && function(end) >= 0.0)
            {
                return RootLocation.Find(function, start, end, EventTolerance);
            }

            start = end;
        }

        return null;
    }
}
