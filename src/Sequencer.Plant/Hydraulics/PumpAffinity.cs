namespace Sequencer.Plant.Hydraulics;

/// <summary>A centrifugal pump at another speed: flow goes with it, head with its square, power with its cube.</summary>
internal static class PumpAffinity
{
    public static double Flow(double flow, double speedRatio) => flow * speedRatio;

    public static double Head(double head, double speedRatio) => head * speedRatio * speedRatio;

    public static double Power(double power, double speedRatio) => power * speedRatio * speedRatio * speedRatio;
}
