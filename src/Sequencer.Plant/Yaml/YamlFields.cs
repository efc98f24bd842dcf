using System.Collections.Immutable;
using Sequencer.Text;

namespace Sequencer.Plant.Yaml;

/// <summary>
/// Reads the keys of one group. A mistake is reported once and a harmless value handed back (an
/// empty text, the range's low end), so that one pass finds every mistake: whoever builds a model
/// from it must throw the model away when <see cref="DiagnosticBag.HasErrors"/>. Keys nobody asked
/// for are reported by <see cref="RejectUnknownKeys"/>.
/// </summary>
public sealed class YamlFields(YamlMapping mapping, DiagnosticBag diagnostics)
{
    private readonly SortedSet<string> _asked = new(StringComparer.Ordinal);

    public SourceSpan Span => mapping.Span;

    public DiagnosticBag Diagnostics => diagnostics;

    public bool Has(string key) => mapping.Find(key) is not null;

    /// <summary>Where the value of <paramref name="key"/> stands, or the whole group where it is missing.</summary>
    public SourceSpan SpanOf(string key) => mapping.Find(key)?.Value.Span ?? mapping.Span;

    public Placed<string> RequiredText(string key) => OptionalText(key) ?? Absent(key, "");

    public Placed<string>? OptionalText(string key) =>
        Scalar(key, "a text") is { } scalar ? new Placed<string>(scalar.Text, scalar.Span) : null;

    public double RequiredNumber(string key, NumberRange range) => OptionalNumber(key, range) ?? Absent(key, range.Low).Value;

    /// <summary>A plain number without a unit; null where the key is missing or wrong.</summary>
    public double? OptionalNumber(string key, NumberRange range) =>
        Scalar(key, "a number") is { } scalar ? ScalarReading.Number(scalar, Named(key), range, diagnostics) : null;

    public long RequiredWholeNumber(string key, long low, long high) => OptionalWholeNumber(key, low, high) ?? Absent(key, low).Value;

    public long? OptionalWholeNumber(string key, long low, long high) =>
        Scalar(key, "a whole number") is { } scalar ? ScalarReading.WholeNumber(scalar, Named(key), low, high, diagnostics) : null;

    /// <summary>The value in the base unit of <paramref name="dimension"/>; so is <paramref name="range"/>.</summary>
    public double RequiredQuantity(string key, Dimension dimension, NumberRange range) =>
        OptionalQuantity(key, dimension, range)?.Value ?? Absent(key, range.Low).Value;

    public Quantity? OptionalQuantity(string key, Dimension dimension, NumberRange range) =>
        Scalar(key, "a number with its unit") is { } scalar
            ? ScalarReading.QuantityOf(scalar, Named(key), dimension, range, diagnostics)
            : null;

    /// <summary><c>yes</c> or <c>no</c>, also <c>true</c> or <c>false</c>.</summary>
    public bool OptionalFlag(string key, bool otherwise) =>
        OptionalWord(key, ["yes", "no", "true", "false"]) is { } word ? word is "yes" or "true" : otherwise;

    /// <summary>One of the words listed; the first one where it is missing or wrong.</summary>
    public string RequiredWord(string key, IReadOnlyList<string> known) => OptionalWord(key, known) ?? Absent(key, known[0]).Value;

    /// <summary>Whether one of the words listed is there; reports nothing.</summary>
    public bool HasOneOf(string key, IReadOnlyList<string> known) =>
        mapping.Find(key)?.Value is YamlScalar scalar && known.Contains(scalar.Text, StringComparer.Ordinal);

    public string? OptionalWord(string key, IReadOnlyList<string> known)
    {
        if (Scalar(key, "one word") is not { } scalar)
        {
            return null;
        }

        if (known.Contains(scalar.Text, StringComparer.Ordinal))
        {
            return scalar.Text;
        }

        diagnostics.Add(YamlDiagnostics.UnknownWord(scalar.Span, Named(key), scalar.Text, known));
        return known[0];
    }

    /// <summary>The group below <paramref name="key"/>; an empty one where it is missing or wrong.</summary>
    public YamlFields RequiredFields(string key) =>
        OptionalFields(key) ?? new YamlFields(new YamlMapping(Absent(key, 0).Span, []), diagnostics);

    public YamlFields? OptionalFields(string key) =>
        Value(key) is { } value && Group(value, Named(key)) is { } group ? new YamlFields(group, diagnostics) : null;

    /// <summary>Each named group below <paramref name="key"/>, in written order; none where the key is missing.</summary>
    public IEnumerable<(Placed<string> Name, YamlFields Fields)> Each(string key)
    {
        if (Value(key) is not { } value || Group(value, Named(key)) is not { } group)
        {
            yield break;
        }

        foreach (YamlEntry entry in group.Entries)
        {
            if (Group(entry.Value, Named(entry.Key.Text)) is { } fields)
            {
                yield return (new Placed<string>(entry.Key.Text, entry.Key.Span), new YamlFields(fields, diagnostics));
            }
        }
    }

    /// <summary>Each group of the list below <paramref name="key"/>; none where the key is missing.</summary>
    public IEnumerable<YamlFields> EachItem(string key)
    {
        foreach (YamlNode item in Items(key))
        {
            if (Group(item, $"an item of {Named(key)}") is { } group)
            {
                yield return new YamlFields(group, diagnostics);
            }
        }
    }

    /// <summary>Each text of the list below <paramref name="key"/>; none where the key is missing.</summary>
    public IEnumerable<Placed<string>> EachText(string key)
    {
        foreach (YamlNode item in Items(key))
        {
            if (item is YamlScalar { IsEmpty: false } scalar)
            {
                yield return new Placed<string>(scalar.Text, scalar.Span);
            }
            else if (item is not YamlMalformed)
            {
                diagnostics.Add(YamlDiagnostics.WrongKind(item.Span, $"an item of {Named(key)}", "a text", item.Kind));
            }
        }
    }

    /// <summary>All keys of the group with single values, for groups whose keys are names.</summary>
    public IEnumerable<Placed<string>> Keys()
    {
        foreach (YamlEntry entry in mapping.Entries)
        {
            yield return new Placed<string>(entry.Key.Text, entry.Key.Span);
        }
    }

    /// <summary>Call last: each key that nothing above asked for is a mistake.</summary>
    public void RejectUnknownKeys()
    {
        foreach (YamlEntry entry in mapping.Entries)
        {
            if (!_asked.Contains(entry.Key.Text))
            {
                diagnostics.Add(YamlDiagnostics.UnknownKey(entry.Key.Span, entry.Key.Text, _asked));
            }
        }
    }

    private ImmutableArray<YamlNode> Items(string key)
    {
        switch (Value(key))
        {
            case null or YamlMalformed:
                return [];
            case YamlSequence sequence:
                return sequence.Items;
            case { } other:
                diagnostics.Add(YamlDiagnostics.WrongKind(other.Span, Named(key), "a list", other.Kind));
                return [];
        }
    }

    private YamlMapping? Group(YamlNode node, string what)
    {
        if (node is not (YamlMapping or YamlMalformed))
        {
            diagnostics.Add(YamlDiagnostics.WrongKind(node.Span, what, "a group of keys", node.Kind));
        }

        return node as YamlMapping;
    }

    private YamlScalar? Scalar(string key, string expected)
    {
        switch (Value(key))
        {
            case null or YamlMalformed:
                return null;
            case YamlScalar { IsEmpty: false } scalar:
                return scalar;
            case { } other:
                diagnostics.Add(YamlDiagnostics.WrongKind(Shown(key, other), Named(key), expected, other.Kind));
                return null;
        }
    }

    /// <summary>An empty value has no letters to mark; its key has.</summary>
    private SourceSpan Shown(string key, YamlNode node) =>
        node.Span.Span.Length > 0 ? node.Span : mapping.Find(key)?.Key.Span ?? node.Span;

    private YamlNode? Value(string key)
    {
        _asked.Add(key);
        return mapping.Find(key)?.Value;
    }

    private Placed<T> Absent<T>(string key, T harmless)
    {
        if (!Has(key))
        {
            diagnostics.Add(YamlDiagnostics.MissingKey(Head(), key));
        }

        return new Placed<T>(harmless, SpanOf(key));
    }

    /// <summary>The first key of the group: a whole group as a marker would hide the place.</summary>
    private SourceSpan Head() => mapping.Entries.Length > 0 ? mapping.Entries[0].Key.Span : mapping.Span;

    private static string Named(string key) => $"`{key}`";
}
