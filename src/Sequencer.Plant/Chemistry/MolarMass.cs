using System.Collections.Frozen;
using System.Globalization;

namespace Sequencer.Plant.Chemistry;

/// <summary>Molar masses from formulas.</summary>
public static class MolarMass
{
    private static readonly FrozenDictionary<string, double> Weights = DataTable.Rows(DataTable.Text("atomic-weights.txt"))
        .Select(DataTable.Cells)
        .ToFrozenDictionary(cells => cells[0], cells => double.Parse(cells[1], CultureInfo.InvariantCulture), StringComparer.Ordinal);

    /// <summary>
    /// g/mol of a formula such as <c>Ca(OH)2</c> or, with water of crystallisation after a point, <c>Al2(SO4)3.14H2O</c>.
    /// </summary>
    /// <exception cref="FormatException">the formula cannot be read or names an element that the table lacks</exception>
    public static double Of(string formula) => formula.Split('.').Sum(part => OfPart(part, formula));

    private static double OfPart(string part, string formula)
    {
        int place = 0;
        double factor = Count(part, ref place);
        Stack<double> open = new();
        open.Push(0);
        while (place < part.Length)
        {
            char first = part[place];
            if (first == '(')
            {
                place++;
                open.Push(0);
            }
            else
            {
                double mass = first == ')' && open.Count > 1 ? Close(open, ref place) : Element(part, ref place, formula);
                open.Push(open.Pop() + (mass * Count(part, ref place)));
            }
        }

        return open.Count == 1 ? factor * open.Pop() : throw new FormatException($"formula `{formula}` lacks a closing bracket");
    }

    private static double Close(Stack<double> open, ref int place)
    {
        place++;
        return open.Pop();
    }

    private static double Element(string part, ref int place, string formula)
    {
        int start = place++;
        while (place < part.Length && char.IsAsciiLetterLower(part[place]))
        {
            place++;
        }

        return Weights.TryGetValue(part[start..place], out double weight)
            ? weight
            : throw new FormatException($"formula `{formula}`: no atomic weight of `{part[start..place]}` is known");
    }

    private static double Count(string part, ref int place)
    {
        int start = place;
        while (place < part.Length && char.IsAsciiDigit(part[place]))
        {
            place++;
        }

        return place == start ? 1 : double.Parse(part[start..place], CultureInfo.InvariantCulture);
    }
}
