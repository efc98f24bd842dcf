using System.Collections.Immutable;
using System.Globalization;

namespace Sequencer.Plant.Chemistry;

/// <summary>Reads the table of components, aqueous species and solids; the format is described at the head of the data file.</summary>
internal static class ReactionTable
{
    private const string AnalyticWord = "analytic ";

    /// <exception cref="FormatException">a row cannot be read, or a reaction does not balance its charge; names the row</exception>
    public static ReactionTableContent Parse(string text)
    {
        List<Component> components = [];
        List<AqueousSpecies> species = [];
        List<Solid> solids = [];
        foreach (string row in DataTable.Rows(text))
        {
            try
            {
                ReadRow(DataTable.Cells(row), components, species, solids);
            }
            catch (Exception problem) when (problem is FormatException or IndexOutOfRangeException or OverflowException)
            {
                throw new FormatException($"row `{row}`: {problem.Message}", problem);
            }
        }

        return new([.. components], [.. species], [.. solids]);
    }

    private static void ReadRow(string[] cells, List<Component> components, List<AqueousSpecies> species, List<Solid> solids)
    {
        switch (cells[0])
        {
            case "component":
                components.Add(new(cells[1], ReactionEquation.ChargeOf(cells[1]), Activity(cells[2]), cells[3]));
                break;
            case "aqueous":
                species.Add(Species(cells));
                break;
            case "solid":
                solids.Add(SolidOf(cells));
                break;
            default:
                throw new FormatException($"`{cells[0]}` is none of component, aqueous, solid");
        }
    }

    private static AqueousSpecies Species(string[] cells)
    {
        ReactionEquation reaction = ReactionEquation.Parse(cells[1]);
        string name = reaction.Right[0].Component;
        if (reaction.Right[0].Coefficient != 1)
        {
            throw new FormatException($"one mole of `{name}` must form");
        }

        Stoichiometry formation = reaction.FormationOfFirstProduct();
        int charge = ReactionEquation.ChargeOf(name);
        RequireCharge(formation, charge);
        return new(name, charge, formation, Constant(cells[2], cells[3]), Activity(cells[4]), cells[5]);
    }

    private static Solid SolidOf(string[] cells)
    {
        Stoichiometry dissolution = ReactionEquation.Parse(cells[2]).DissolutionOfFirstReactant();
        RequireCharge(dissolution, 0);
        return new(cells[1], dissolution, Constant(cells[3], cells[4]), cells[5]);
    }

    private static void RequireCharge(Stoichiometry stoichiometry, int charge)
    {
        double sum = stoichiometry.Components.Sum(term => term.Coefficient * ReactionEquation.ChargeOf(term.Component));
        if (Math.Abs(sum - charge) > 1e-9)
        {
            throw new FormatException($"the charge does not balance: {sum} against {charge}");
        }
    }

    private static EquilibriumConstant Constant(string logK, string temperature) =>
        temperature.StartsWith(AnalyticWord, StringComparison.Ordinal)
            ? new(Number(logK), 0, Analytic(temperature[AnalyticWord.Length..]))
            : new(Number(logK), Number(temperature), []);

    private static ImmutableArray<double> Analytic(string text)
    {
        ImmutableArray<double> terms = [.. text.Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(Number)];
        return terms.Length == EquilibriumConstant.AnalyticTerms
            ? terms
            : throw new FormatException($"an analytic expression has {EquilibriumConstant.AnalyticTerms} terms, not {terms.Length}");
    }

    private static ActivityCoefficient Activity(string text)
    {
        string[] words = text.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        return words[0] switch
        {
            "davies" => ActivityCoefficient.Davies,
            "uncharged" => ActivityCoefficient.Uncharged,
            "debye-huckel" => ActivityCoefficient.ExtendedDebyeHuckel(Number(words[1]), Number(words[2])),
            _ => throw new FormatException($"`{text}` is no equation of activity"),
        };
    }

    private static double Number(string text) => double.Parse(text, NumberStyles.Float, CultureInfo.InvariantCulture);
}
