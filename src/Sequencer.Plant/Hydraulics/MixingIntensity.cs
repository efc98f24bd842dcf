namespace Sequencer.Plant.Hydraulics;

/// <summary>How hard a stirred water is sheared: G = sqrt(P / (mu V)), 1/s (Camp and Stein).</summary>
internal static class MixingIntensity
{
    /// <summary>G in 1/s of a power in W, a viscosity in Pa s and a volume in m3.</summary>
    public static double Gradient(double power, double viscosity, double volume) => Math.Sqrt(power / (viscosity * volume));
}
