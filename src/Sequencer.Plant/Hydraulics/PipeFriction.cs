namespace Sequencer.Plant.Hydraulics;

/// <summary>Loss of head by friction in a full round pipe.</summary>
internal static class PipeFriction
{
    /// <summary>Below it flow is laminar (common practice, no source).</summary>
    private const double LaminarReynolds = 2300.0;

    private const int Iterations = 20;

    /// <summary>
    /// Darcy's friction factor: 64/Re where flow is laminar, else Colebrook's equation 1/sqrt(f) = -2 log10(k/(3.7 D) + 2.51/(Re sqrt(f))), solved by iteration, which
    /// gains a digit or more each time. Source of the equation: Ind. Eng. Chem. Res. 48 (2009) 3665.
    /// </summary>
    public static double Factor(double reynolds, double relativeRoughness)
    {
        if (reynolds < LaminarReynolds)
        {
            return 64.0 / reynolds;
        }

        double inverseRoot = 8.0;
        for (int count = 0; count < Iterations; count++)
        {
            inverseRoot = -2.0 * Math.Log10((relativeRoughness / 3.7) + (2.51 * inverseRoot / reynolds));
        }

        return 1.0 / (inverseRoot * inverseRoot);
    }

    /// <summary>Head lost in m (Darcy and Weisbach): f L/D v^2/(2 g); flow in m3/s, lengths in m, kinematic viscosity in m2/s.</summary>
    public static double HeadLoss(double flow, double bore, double length, double roughness, double kinematicViscosity)
    {
        double velocity = flow / (Math.PI / 4.0 * bore * bore);
        double factor = Factor(velocity * bore / kinematicViscosity, roughness / bore);
        return factor * length / bore * velocity * velocity / (2.0 * OutletFlow.Gravity);
    }
}
