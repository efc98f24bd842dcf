using System.Globalization;

namespace Sequencer.Testing.HandWrittenPlant;

/// <summary>Numbers as a program in C prints them, with blanks between.</summary>
public static class PrintedNumbers
{
    public static double[] Read(string line) => [.. line.Split(' ').Select(text => double.Parse(text, NumberStyles.Float, CultureInfo.InvariantCulture))];
}
