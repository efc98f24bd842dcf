using System.Collections.Immutable;
using Sequencer.Control.TransitionSystems;
using Sequencer.StructuredText.Syntax;
using Sequencer.Text;

namespace Sequencer.StructuredText.Types;

/// <summary>The types that a text can name: elementary ones and its own.</summary>
internal sealed class TypeTable
{
    /// <summary>The most elementary variables in one array or structure.</summary>
    public const int MostParts = 10_000;

    private readonly Dictionary<string, DataType> _types = new(StringComparer.OrdinalIgnoreCase);
    private readonly Dictionary<string, List<(DataType Type, long Value)>> _enumerators = new(StringComparer.OrdinalIgnoreCase);
    private readonly DiagnosticBag _diagnostics;

    public TypeTable(DiagnosticBag diagnostics)
    {
        _diagnostics = diagnostics;
    }

    /// <summary>Finds the number behind a constant expression; null where it has reported that there is none.</summary>
    public required Func<ExpressionSyntax, long?> ConstantValue { get; init; }

    /// <summary>Finds the numbers that a variable of the type begins with, one for each elementary variable in it.</summary>
    public required Func<ExpressionSyntax, DataType, ImmutableArray<long>> FirstValues { get; init; }

    public DataType? Find(string name) => ElementaryTypes.Find(name) ?? _types.GetValueOrDefault(name);

    public IReadOnlyList<(DataType Type, long Value)> Enumerators(string name) =>
        _enumerators.TryGetValue(name, out List<(DataType, long)>? found) ? found : [];

    public void Declare(TypeDeclarationSyntax declaration)
    {
        if (Resolve(declaration.Type, declaration.Name.Text) is { } type)
        {
            ImmutableArray<long> initial = declaration.Initial is null ? type.Defaults : FirstValues(declaration.Initial, type);
            _types[declaration.Name.Text] = Renamed(type, declaration.Name.Text, initial);
        }
    }

    /// <summary>The type, or null where it has been reported as unknown or is a block's name.</summary>
    public DataType? Resolve(TypeSyntax syntax, string? name = null) => syntax switch
    {
        NamedTypeSyntax named => Named(named.Name),
        SubrangeTypeSyntax subrange => Subrange(subrange, name),
        EnumerationTypeSyntax enumeration => Enumeration(enumeration, name ?? "an enumeration"),
        ArrayTypeSyntax array => Array(array, name),
        StructureTypeSyntax structure => Structure(structure, name ?? "a structure"),
        StringTypeSyntax characters => Characters(characters),
        _ => throw new System.Diagnostics.UnreachableException(syntax.GetType().Name),
    };

    /// <summary>An alias is the type itself with another initial value; values mix freely.</summary>
    private static DataType Renamed(DataType type, string name, ImmutableArray<long> initial) =>
        type.Name == name && type.Defaults.SequenceEqual(initial)
            ? type
            : new DataType(type.Name, type.Family, type.Range, type)
            {
                Enumerators = type.Enumerators,
                Dimensions = type.Dimensions,
                Element = type.Element,
                Fields = type.Fields,
                Defaults = initial,
            };

    /// <summary>The lowest and highest index of each dimension; null where it has been reported that there is none.</summary>
    public ImmutableArray<IntegerRange>? Dimensions(ArrayTypeSyntax syntax)
    {
        ImmutableArray<IntegerRange>.Builder dimensions = ImmutableArray.CreateBuilder<IntegerRange>();
        Int128 elements = 1;
        foreach (DimensionSyntax dimension in syntax.Dimensions)
        {
            if (ConstantValue(dimension.Lower) is not { } lower || ConstantValue(dimension.Upper) is not { } upper)
            {
                return null;
            }

            if (lower > upper)
            {
                _diagnostics.Add(StructuredTextDiagnostics.WrongType(dimension.Span, "an index range with its lower bound first", "an empty one"));
                return null;
            }

            dimensions.Add(new IntegerRange(lower, upper));
            elements = Int128.Min(elements * ((Int128)upper - lower + 1), MostParts + 1);
        }

        return elements <= MostParts ? dimensions.ToImmutable() : TooMany(syntax.Span);
    }

    private ImmutableArray<IntegerRange>? TooMany(SourceSpan span)
    {
        _diagnostics.Add(StructuredTextDiagnostics.NotCompared(
            span,
            FormattableString.Invariant($"an array of more than {MostParts} variables"),
            "each of them is a variable of its own there",
            "take fewer elements, or split it"));
        return null;
    }

    private DataType? Array(ArrayTypeSyntax syntax, string? name)
    {
        if (Resolve(syntax.Element) is not { } element || Dimensions(syntax) is not { } dimensions)
        {
            return null;
        }

        long elements = dimensions.Aggregate(1L, (product, dimension) => product * (dimension.Maximum - dimension.Minimum + 1));
        if (elements * element.Defaults.Length > MostParts)
        {
            TooMany(syntax.Span);
            return null;
        }

        string shown = name ?? $"ARRAY [{string.Join(", ", dimensions)}] OF {element}";
        return new DataType(shown, TypeFamily.Array, new IntegerRange(0, 0))
        {
            Dimensions = dimensions,
            Element = element,
            Defaults = [.. Enumerable.Repeat(element.Defaults, (int)elements).SelectMany(values => values)],
        };
    }

    private DataType? Structure(StructureTypeSyntax syntax, string name)
    {
        List<(string Name, DataType Type)> fields = [];
        List<long> defaults = [];
        Dictionary<string, SourceSpan> first = new(StringComparer.OrdinalIgnoreCase);
        bool isWhole = true;
        foreach (VariableSyntax field in syntax.Fields)
        {
            if (!first.TryAdd(field.Name.Text, field.Name.Span))
            {
                _diagnostics.Add(StructuredTextDiagnostics.DeclaredTwice(field.Name.Span, field.Name.Text, first[field.Name.Text]));
            }
            else if (field.Address is { } address)
            {
                _diagnostics.Add(StructuredTextDiagnostics.NotSupportedYet(address.Span, "an address inside a structure"));
            }
            else if (Resolve(field.Type) is { } type)
            {
                fields.Add((field.Name.Text, type));
                defaults.AddRange(field.Initial is null ? type.Defaults : FirstValues(field.Initial, type));
                continue;
            }

            isWhole = false;
        }

        if (fields.Count == 0 && isWhole)
        {
            _diagnostics.Add(StructuredTextDiagnostics.Expected(syntax.Span, "a member of the structure", "none"));
            return null;
        }

        if (defaults.Count > MostParts)
        {
            TooMany(syntax.Span);
            return null;
        }

        return isWhole ? new DataType(name, TypeFamily.Structure, new IntegerRange(0, 0)) { Fields = [.. fields], Defaults = [.. defaults] } : null;
    }

    private DataType? Characters(StringTypeSyntax syntax) =>
        ConstantValue(syntax.Length) is null ? null : Named(syntax.Name);

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
        return new DataType(shown, TypeFamily.Integer, new IntegerRange(lower, upper), narrowed) { Defaults = [lower] };
    }

    private DataType Enumeration(EnumerationTypeSyntax syntax, string name)
    {
        ImmutableArray<(string, long)>.Builder values = ImmutableArray.CreateBuilder<(string, long)>();
        long next = 0;
        DataType? of = syntax.Base is null ? null : NumbersOf(syntax.Base);
        foreach (EnumerationValueSyntax value in syntax.Values)
        {
            long number = value.Value is null ? next : ConstantValue(value.Value) ?? next;
            if (of is not null && !of.Range.Contains(number))
            {
                _diagnostics.Add(StructuredTextDiagnostics.OutsideType(value.Name.Span, $"the number of `{value.Name}`", of.Name, of.Range));
            }

            values.Add((value.Name.Text, number));
            next = number < long.MaxValue ? number + 1 : number;
        }

        IntegerRange range = new(values.Min(value => value.Item2), values.Max(value => value.Item2));
        DataType type = new(name, TypeFamily.Enumeration, range) { Enumerators = values.ToImmutable(), Defaults = [values[0].Item2] };
        Register(syntax, type);
        return type;
    }

    /// <summary>The type of an enumeration's numbers: whole numbers or strings of bits (third edition, from memory).</summary>
    private DataType? NumbersOf(NameSyntax name)
    {
        if (Named(name) is not { } type)
        {
            return null;
        }

        if (type.Family is TypeFamily.Integer or TypeFamily.Bits)
        {
            return type;
        }

        _diagnostics.Add(StructuredTextDiagnostics.WrongType(name.Span, "an integer type for the numbers of an enumeration", type.Name));
        return null;
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
