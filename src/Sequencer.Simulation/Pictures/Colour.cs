using System.Globalization;

namespace Sequencer.Simulation.Pictures;

/// <summary>An opaque colour, red, green and blue from 0 to 255.</summary>
public readonly record struct Colour(byte Red, byte Green, byte Blue)
{
    public string Hex => string.Create(CultureInfo.InvariantCulture, $"#{Red:x2}{Green:x2}{Blue:x2}");

    /// <summary>Relative luminance from 0 (black) to 1 (white), IEC 61966-2-1 (sRGB) with the weights of ITU-R BT.709.</summary>
    public double Luminance => (0.2126 * Linear(Red)) + (0.7152 * Linear(Green)) + (0.0722 * Linear(Blue));

    private static double Linear(byte channel)
    {
        double value = channel / 255.0;
        return value <= 0.04045 ? value / 12.92 : Math.Pow((value + 0.055) / 1.055, 2.4);
    }
}
