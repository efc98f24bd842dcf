namespace Sequencer.Plant.Filtration;

/// <summary>
/// Where a feed pump and a cake meet. The pump gives q_0 (1 - p / p_max), a straight line down to the pressure at which it stalls (our own simplification, as air-driven
/// diaphragm pumps have it, common practice, no source); cloth and cake let q = A p / (mu (alpha_0 p^s w + R)) through (Ruth, with w kg of dry solids on a m2).
/// </summary>
internal static class FedCake
{
    private const int MostRounds = 60;
    private const double Close = 1e-13;

    /// <summary>Pa.</summary>
    /// <param name="feed">q_0, m3/s</param>
    /// <param name="stall">p_max, Pa</param>
    /// <param name="area">A, m2</param>
    /// <param name="viscosity">mu, Pa s</param>
    /// <param name="cake">alpha_0 w, 1/m at 1 Pa</param>
    /// <param name="compressibility">s, 0 to 1</param>
    /// <param name="medium">R, 1/m</param>
    public static double Pressure(double feed, double stall, double area, double viscosity, double cake, double compressibility, double medium)
    {
        // Newton's steps inside a bracket: the pump's flow falls with the pressure and the cake's rises.
        double low = 0.0;
        double high = stall;
        double pressure = stall * feed / (feed + Through(stall, area, viscosity, cake, compressibility, medium));
        for (int round = 0; round < MostRounds; round++)
        {
            double resisting = cake * Math.Pow(pressure, compressibility);
            double resistance = viscosity * (resisting + medium);
            double excess = (feed * (1.0 - (pressure / stall))) - (area * pressure / resistance);
            if (excess > 0.0)
            {
                low = pressure;
            }
            else
            {
                high = pressure;
            }

            double slope = -(feed / stall) - (area * (resistance - (viscosity * compressibility * resisting)) / (resistance * resistance));
            double next = pressure - (excess / slope);
            next = next > low && next < high ? next : 0.5 * (low + high);
            if (Math.Abs(next - pressure) <= Close * stall)
            {
                return next;
            }

            pressure = next;
        }

        return pressure;
    }

    /// <summary>m3/s through cloth and cake.</summary>
    public static double Through(double pressure, double area, double viscosity, double cake, double compressibility, double medium) =>
        area * pressure / (viscosity * ((cake * Math.Pow(pressure, compressibility)) + medium));
}
