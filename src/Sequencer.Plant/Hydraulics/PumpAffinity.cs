namespace Sequencer.Plant.Hydraulics;

/// <summary>A centrifugal pump at another speed: flow goes with it, head with its square.</summary>
internal static class PumpAffinity
{
    public static double Head(double head, double speedRatio) => head * speedRatio * speedRatio;
}
