using System.Collections.Immutable;
using Sequencer.Plant.Yaml;
using Sequencer.Text;

namespace Sequencer.Plant.Description;

/// <summary>The names of one plant: each is declared once, and references are looked up after all are declared.</summary>
internal sealed class PlantNames(DiagnosticBag diagnostics)
{
    private readonly SortedDictionary<string, (NameKind Kind, SourceSpan Span)> _names = new(StringComparer.Ordinal);
    private readonly List<(Placed<string> Name, string Expected, ImmutableArray<NameKind> Allowed)> _references = [];

    public void Declare(Placed<string> name, NameKind kind)
    {
        if (!IsName(name.Value))
        {
            diagnostics.Add(PlantDiagnostics.BadName(name));
        }
        else if (!_names.TryAdd(name.Value, (kind, name.Span)))
        {
            diagnostics.Add(PlantDiagnostics.DuplicateName(name, _names[name.Value].Span));
        }
    }

    public NameKind? KindOf(string name) => _names.TryGetValue(name, out (NameKind Kind, SourceSpan Span) found) ? found.Kind : null;

    /// <summary>A reference, checked by <see cref="CheckReferences"/> when all names are declared.</summary>
    public void Refer(Placed<string> name, string expected, params ReadOnlySpan<NameKind> allowed)
    {
        if (name.Value.Length > 0)
        {
            _references.Add((name, expected, [.. allowed]));
        }
    }

    /// <summary>The text below a key, which must be there and lead to a thing of one of these kinds.</summary>
    public string RequiredReference(YamlFields fields, string key, string expected, params ReadOnlySpan<NameKind> allowed)
    {
        Placed<string> name = fields.RequiredText(key);
        Refer(name, expected, allowed);
        return name.Value;
    }

    /// <summary>The texts of the list below a key, each of which leads to a thing of one of these kinds.</summary>
    public ImmutableArray<string> References(YamlFields fields, string key, string expected, params ReadOnlySpan<NameKind> allowed)
    {
        ImmutableArray<string>.Builder all = ImmutableArray.CreateBuilder<string>();
        foreach (Placed<string> name in fields.EachText(key))
        {
            Refer(name, expected, allowed);
            all.Add(name.Value);
        }

        return all.ToImmutable();
    }

    /// <summary>Reports each reference to a name that is not there or is of another kind.</summary>
    public void CheckReferences()
    {
        foreach ((Placed<string> name, string expected, ImmutableArray<NameKind> allowed) in _references)
        {
            if (KindOf(name.Value) is not { } kind || !allowed.Contains(kind))
            {
                IEnumerable<string> known = _names.Where(declared => allowed.Contains(declared.Value.Kind)).Select(declared => declared.Key);
                diagnostics.Add(PlantDiagnostics.UnknownName(name, expected, known));
            }
        }
    }

    private static bool IsName(string text)
    {
        bool fits = text.Length > 0 && char.IsAsciiLetter(text[0]);
        foreach (char character in text)
        {
            fits &= char.IsAsciiLetterOrDigit(character) || character == '_';
        }

        return fits;
    }
}
