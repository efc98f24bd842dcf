namespace Sequencer.Plant.Vacuum;

/// <summary>A tight vessel pumped out by a pump whose speed, in volume at its inlet, does not change with pressure.</summary>
internal static class Evacuation
{
    /// <summary>t = V/S ln((p0 - pu)/(p - pu)): seconds, volume in m3, speed in m3/s; pressures absolute, in one unit; pu is where the pump gets no further.</summary>
    public static double Seconds(double volume, double speed, double from, double to, double ultimate = 0.0) =>
        volume / speed * Math.Log((from - ultimate) / (to - ultimate));
}
