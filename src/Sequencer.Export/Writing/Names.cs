using System.Globalization;
using System.Text;

namespace Sequencer.Export.Writing;

/// <summary>
/// Identifiers of the exported text. A name is made from a path (<c>step30.dose_P304.clock</c>) by
/// joining its parts in capitalised form; IEC 61131-3 knows no case and no double or trailing
/// underscore. What a path became is remembered, so the same path gives the same name.
/// </summary>
internal sealed class Names
{
    private readonly Dictionary<string, string> _byPath = new(StringComparer.Ordinal);
    private readonly HashSet<string> _taken = new(StringComparer.OrdinalIgnoreCase);

    /// <summary>Every path named so far with its identifier, in the order of naming.</summary>
    public IReadOnlyDictionary<string, string> ByPath => _byPath;

    public string Of(string path)
    {
        if (_byPath.TryGetValue(path, out string? known))
        {
            return known;
        }

        string wanted = Identifier(path);
        string name = wanted;
        for (int number = 2; !_taken.Add(name); number++)
        {
            name = wanted + "_N" + number.ToString(CultureInfo.InvariantCulture);
        }

        return _byPath[path] = name;
    }

    private static string Identifier(string path)
    {
        StringBuilder name = new();
        foreach (string part in path.Split(['.', '_', ' ', '-'], StringSplitOptions.RemoveEmptyEntries))
        {
            if (name.Length > 0)
            {
                name.Append('_');
            }

            name.Append(char.ToUpperInvariant(part[0])).Append(part.AsSpan(1));
        }

        return name.ToString();
    }
}
