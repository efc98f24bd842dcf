using System.Collections.Immutable;
using Sequencer.Control.TransitionSystems;
using Sequencer.StructuredText.Syntax;
using Sequencer.Text;

namespace Sequencer.StructuredText.Types;

/// <summary>The types that a text can name: elementary ones and its own.</summary>
internal sealed class TypeTable
{
    private readonly Dictionary<string, DataType> _types = new(StringComparer.OrdinalIgnoreCase);
    private readonly Dictionary<string, List<(DataType Type, long Value)>> _enumerators = new(StringComparer.OrdinalIgnoreCase);
    private readonly DiagnosticBag _diagnostics;

    public TypeTable(DiagnosticBag diagnostics)
    {
        _diagnostics = diagnostics;
    }

    /// <summary>Finds the number behind a constant expression; null where it has reported that there is none.</summary>
    public required Func<ExpressionSyntax, long?> ConstantValue { get; init; }

    public DataType? Find(string name) =>
        ElementaryTypes.ByName.TryGetValue(name, out DataType? elementary) ? elementary : _types.GetValueOrDefault(name);

    public IReadOnlyList<(DataType Type, long Value)> Enumerators(string name) =>
        _enumerators.TryGetValue(name, out List<(DataType, long)>? found) ? found : [];

    public void Declare(TypeDeclarationSyntax declaration)
    {
        if (Resolve(declaration.Type, declaration.Name.Text) is { } type)
        {
            long initial = declaration.Initial is null ? type.Default : ConstantValue(declaration.Initial) ?? type.Default;
            _types[declaration.Name.Text] = Renamed(type, declaration.Name.Text, initial);
        }
    }

    /// <summary>The type, or null where it has been reported as unknown or is a block's name.</summary>
    public DataType? Resolve(TypeSyntax syntax, string? name = null) => syntax switch
    {
        NamedTypeSyntax named => Named(named.Name),
        SubrangeTypeSyntax subrange => Subrange(subrange, name),
        EnumerationTypeSyntax enumeration => Enumeration(enumeration, name ?? "an enumeration"),
        _ => throw new System.Diagnostics.UnreachableException(syntax.GetType().Name),
    };

    /// <summary>An alias is the type itself with another initial value; values mix freely.</summary>
    private static DataType Renamed(DataType type, string name, long initial) =>
        type.Name == name && type.Default == initial
            ? type
            : new DataType(type.Name, type.Family, type.Range, type) { Enumerators = type.Enumerators, Default = initial };

    private DataType? Named(NameSyntax name)
    {
        if (Find(name.Text) is { } found)
        {
            return found;
        }

        _diagnostics.Add(Parsing.ReservedWords.TypeNames.Contains(name.Text)
            ? StructuredTextDiagnostics.NotSupportedYet(name.Span, $"type {name.Text.ToUpperInvariant()}")
            : StructuredTextDiagnostics.UnknownType(name.Span, name.Text));
        return null;
    }

    private DataType? Subrange(SubrangeTypeSyntax syntax, string? name)
    {
        if (Named(syntax.Base) is not { } narrowed || ConstantValue(syntax.Lower) is not { } lower || ConstantValue(syntax.Upper) is not { } upper)
        {
            return null;
        }

        if (narrowed.Family != TypeFamily.Integer || lower > upper)
        {
            _diagnostics.Add(StructuredTextDiagnostics.WrongType(syntax.Span, "an integer type with its lower bound first", "something else"));
            return null;
        }

        if (!narrowed.Range.Contains(new IntegerRange(lower, upper)))
        {
            _diagnostics.Add(StructuredTextDiagnostics.OutsideType(syntax.Span, FormattableString.Invariant($"{lower}..{upper}"), narrowed.Name, narrowed.Range));
            return null;
        }

        string shown = name ?? FormattableString.Invariant($"{narrowed.Name} ({lower}..{upper})");
        return new DataType(shown, TypeFamily.Integer, new IntegerRange(lower, upper), narrowed) { Default = Math.Clamp(0, lower, upper) };
    }

    private DataType Enumeration(EnumerationTypeSyntax syntax, string name)
    {
        ImmutableArray<(string, long)>.Builder values = ImmutableArray.CreateBuilder<(string, long)>();
        long next = 0;
        foreach (EnumerationValueSyntax value in syntax.Values)
        {
            long number = value.Value is null ? next : ConstantValue(value.Value) ?? next;
            values.Add((value.Name.Text, number));
            next = number + 1;
        }

        IntegerRange range = new(values.Min(value => value.Item2), values.Max(value => value.Item2));
        DataType type = new(name, TypeFamily.Enumeration, range) { Enumerators = values.ToImmutable(), Default = values[0].Item2 };
        Register(syntax, type);
        return type;
    }

    private void Register(EnumerationTypeSyntax syntax, DataType type)
    {
        foreach ((EnumerationValueSyntax value, (_, long number)) in syntax.Values.Zip(type.Enumerators))
        {
            if (!_enumerators.TryGetValue(value.Name.Text, out List<(DataType Type, long Value)>? known))
            {
                known = [];
                _enumerators.Add(value.Name.Text, known);
            }

            if (known.Any(other => other.Type == type))
            {
                _diagnostics.Add(StructuredTextDiagnostics.DeclaredTwice(value.Name.Span, value.Name.Text, syntax.Span));
            }

            known.Add((type, number));
        }
    }
}
