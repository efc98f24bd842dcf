using System.Collections.Immutable;
using System.Globalization;

namespace Sequencer.Plant.Chemistry;

/// <summary>A reaction as written in a table of constants: <c>2 H+ + CO3-2 = H2CO3</c>, terms parted by <c> + </c>.</summary>
internal sealed record ReactionEquation(ImmutableArray<ComponentCoefficient> Left, ImmutableArray<ComponentCoefficient> Right)
{
    public const string Water = "H2O";
    public const string Proton = "H+";

    /// <exception cref="FormatException">the text is no reaction</exception>
    public static ReactionEquation Parse(string text)
    {
        string[] sides = text.Split(" = ", StringSplitOptions.TrimEntries);
        return sides.Length == 2
            ? new(Side(sides[0]), Side(sides[1]))
            : throw new FormatException($"`{text}` is no reaction: it needs one ` = `");
    }

    /// <summary>What forms the first product: the left side less the other products.</summary>
    public Stoichiometry FormationOfFirstProduct() => Difference(Left, Right.RemoveAt(0));

    /// <summary>What the first reactant gives when it dissolves: the right side less the other reactants.</summary>
    public Stoichiometry DissolutionOfFirstReactant() => Difference(Right, Left.RemoveAt(0));

    /// <summary>The charge that a name ends with: <c>+2</c>, <c>-</c>, or none.</summary>
    public static int ChargeOf(string name)
    {
        int sign = name.LastIndexOfAny(['+', '-']);
        if (sign < 0)
        {
            return 0;
        }

        string digits = name[(sign + 1)..];
        int size = digits.Length == 0 ? 1 : int.Parse(digits, NumberStyles.None, CultureInfo.InvariantCulture);
        return name[sign] == '+' ? size : -size;
    }

    private static Stoichiometry Difference(ImmutableArray<ComponentCoefficient> from, ImmutableArray<ComponentCoefficient> less)
    {
        ImmutableArray<ComponentCoefficient> net = [.. from
            .Concat(less.Select(term => term with { Coefficient = -term.Coefficient }))
            .GroupBy(term => term.Component, StringComparer.Ordinal)
            .Select(group => new ComponentCoefficient(group.Key, group.Sum(term => term.Coefficient)))
            .Where(term => term.Coefficient != 0)];
        return new([.. net.Where(term => term.Component != Water)], net.Where(term => term.Component == Water).Sum(term => term.Coefficient));
    }

    private static ImmutableArray<ComponentCoefficient> Side(string text) =>
        [.. text.Split(" + ", StringSplitOptions.TrimEntries).Select(Term)];

    private static ComponentCoefficient Term(string text)
    {
        string[] parts = text.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        return parts.Length switch
        {
            1 => new(parts[0], 1),
            2 => new(parts[1], double.Parse(parts[0], NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture)),
            _ => throw new FormatException($"`{text}` is no term of a reaction"),
        };
    }
}
