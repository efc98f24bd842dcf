using System.Globalization;
using Sequencer.Testing;

namespace Sequencer.Plant.Tests.Chemistry;

/// <summary>One row of Reference/speciation.csv (computed with PHREEQC 3 from minteq.v4.dat, U.S. Geological Survey).</summary>
internal sealed record ReferencePoint(string Case, double Celsius, double X, double Ph, double IonicStrength, IReadOnlyDictionary<string, double> Quantities)
{
    public static IReadOnlyList<ReferencePoint> Series(string name) => [.. All().Where(point => point.Case == name)];

    public override string ToString() => FormattableString.Invariant($"{Case} x={X}");

    private static IEnumerable<ReferencePoint> All()
    {
        string path = RepositoryPath.At("tests", "Sequencer.Plant.Tests", "Chemistry", "Reference", "speciation.csv");
        string[] lines = [.. File.ReadLines(path).Where(line => !line.StartsWith('#'))];
        string[] header = Cells(lines[0]);
        return lines.Skip(1).Select(line => Row(header, Cells(line)));
    }

    private static ReferencePoint Row(string[] header, string[] cells)
    {
        double Value(string column) => double.Parse(cells[Array.IndexOf(header, column)], CultureInfo.InvariantCulture);
        Dictionary<string, double> quantities = header.Skip(8)
            .Where(column => cells[Array.IndexOf(header, column)].Length > 0)
            .ToDictionary(column => column, Value, StringComparer.Ordinal);
        return new(cells[0], Value("temperature_C"), Value("x"), Value("pH"), Value("ionic_strength_mol_kg"), quantities);
    }

    /// <summary>Splits at commas outside double quotes.</summary>
    private static string[] Cells(string line)
    {
        string[] quoted = line.Split('"');
        for (int part = 1; part < quoted.Length; part += 2)
        {
            quoted[part] = quoted[part].Replace(",", ";", StringComparison.Ordinal);
        }

        return string.Concat(quoted).Split(',');
    }
}
