using Sequencer.Export.Writing;

namespace Sequencer.Export.Equivalence;

/// <summary>Which variable of a unit's text stands for which of the program's, by the names of both.</summary>
internal sealed class PairedNames
{
    private readonly Dictionary<string, string> _byPath;
    private readonly string _unit;

    public PairedNames(ExportedBlock block)
    {
        _unit = block.Unit;
        _byPath = block.Variables.ToDictionary(variable => variable.Path, variable => variable.Name, StringComparer.Ordinal);
        _byPath["power.returned"] = "power.returned";
    }

    /// <summary>The text's name of a program's variable; null where the text has none.</summary>
    public string? Image(string name) => Path("", name);

    public string? Alarm(string name) => Path("alarm.", name);

    /// <summary>The names of structured text do not differ by case.</summary>
    public static T? Find<T>(IEnumerable<T> items, Func<T, string> name, string? wanted)
        where T : class =>
        wanted is null ? null : items.FirstOrDefault(item => string.Equals(name(item), wanted, StringComparison.OrdinalIgnoreCase));

    private string? Path(string kind, string name)
    {
        string below = name.StartsWith(_unit + ".", StringComparison.Ordinal) ? name[(_unit.Length + 1)..] : name;
        return _byPath.GetValueOrDefault(kind + name) ?? _byPath.GetValueOrDefault(kind + below);
    }
}
