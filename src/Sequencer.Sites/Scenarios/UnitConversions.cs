using Sequencer.Plant.Yaml;

namespace Sequencer.Sites.Scenarios;

/// <summary>Converts between units of one dimension for scenarios, by the table of the site's YAML files.</summary>
internal static class UnitConversions
{
    /// <summary>Far below any resolution; takes away what a factor such as 1/3600 leaves behind.</summary>
    private const int Decimals = 10;

    /// <summary>Null where the dimensions differ or a unit is unknown.</summary>
    public static decimal? Convert(decimal value, string from, string to)
    {
        if (Unit.Find(Alias(from)) is not Unit source || Unit.Find(Alias(to)) is not Unit target || source.Dimension != target.Dimension)
        {
            return null;
        }

        return source == target ? value : decimal.Round(value * (decimal)source.Scale / (decimal)target.Scale, Decimals);
    }

    /// <summary>Programs write degrees Celsius as <c>degC</c>, plant descriptions as <c>C</c>.</summary>
    private static string Alias(string symbol) => symbol == "degC" ? "C" : symbol;
}
