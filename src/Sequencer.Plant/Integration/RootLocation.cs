namespace Sequencer.Plant.Integration;

/// <summary>Finds when a function crosses zero between two times of opposite sign.</summary>
internal static class RootLocation
{
    private const int MostIterations = 200;

    /// <summary>
    /// The Illinois variant of false position (Dowell and Jarratt, BIT 11 (1971) 168). Returns a
    /// time at which the function has reached the sign it has at <paramref name="end"/>, no later
    /// than <paramref name="tolerance"/> seconds after the crossing.
    /// </summary>
    public static double Find(Func<double, double> function, double start, double end, double tolerance)
    {
        double low = start;
        double high = end;
        double atLow = function(low);
        double atHigh = function(high);
        int side = 0;
        for (int iteration = 0; iteration < MostIterations && high - low > tolerance; iteration++)
        {
            double middle = ((atHigh * low) - (atLow * high)) / (atHigh - atLow);
            if (!(middle > low && middle < high))
            {
                middle = 0.5 * (low + high);
            }

            double value = function(middle);
            if (Math.Sign(value) == Math.Sign(function(end)))
            {
                high = middle;
                atHigh = value;
                atLow *= side == 1 ? 0.5 : 1.0;
                side = 1;
            }
            else
            {
                low = middle;
                atLow = value;
                atHigh *= side == -1 ? 0.5 : 1.0;
                side = -1;
            }

            // False position creeps where the function is flat; halving in turn bounds the number of steps.
            if (iteration % 3 == 2)
            {
                (low, atLow, high, atHigh) = Halve(function, low, atLow, high, atHigh);
            }
        }

        return high;
    }

    private static (double Low, double AtLow, double High, double AtHigh) Halve(
        Func<double, double> function, double low, double atLow, double high, double atHigh)
    {
        double middle = 0.5 * (low + high);
        double value = function(middle);
        return Math.Sign(value) == Math.Sign(atHigh) ? (low, atLow, middle, value) : (middle, value, high, atHigh);
    }
}
