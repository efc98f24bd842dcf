using System.Collections.Immutable;
using Sequencer.Control.TransitionSystems;

namespace Sequencer.StructuredText.Types;

/// <summary>
/// A type of values. A subrange has the <see cref="Base"/> it narrows; every other type is its own base.
/// </summary>
internal sealed class DataType
{
    private readonly DataType? _base;
    private ImmutableArray<long> _defaults;

    public DataType(string name, TypeFamily family, IntegerRange range, DataType? narrowed = null)
    {
        Name = name;
        Family = family;
        Range = range;
        _base = narrowed?.Base;
    }

    public string Name { get; }

    public TypeFamily Family { get; }

    public IntegerRange Range { get; }

    public DataType Base => _base ?? this;

    /// <summary>Names of an enumeration and their numbers, in written order.</summary>
    public ImmutableArray<(string Name, long Value)> Enumerators { get; init; } = [];

    /// <summary>Of an array: the lowest and highest index of each dimension.</summary>
    public ImmutableArray<IntegerRange> Dimensions { get; init; } = [];

    /// <summary>Of an array: what it is made of.</summary>
    public DataType? Element { get; init; }

    /// <summary>Of a structure, in written order.</summary>
    public ImmutableArray<(string Name, DataType Type)> Fields { get; init; } = [];

    public Sort Sort => Family == TypeFamily.Boolean ? Sort.Boolean : Sort.Integer;

    public bool IsCompound => Family is TypeFamily.Array or TypeFamily.Structure;

    public bool IsReal => Family == TypeFamily.Opaque && Name is "REAL" or "LREAL" || this == ElementaryTypes.RealLiteral;

    /// <summary>
    /// The values of a variable without initial ones (second edition, 2.3.3.2 and 2.4.3.1, from memory), one for each elementary variable in it: 0, the
    /// first name of an enumeration, the lowest value of a subrange.
    /// </summary>
    public ImmutableArray<long> Defaults
    {
        get => _defaults.IsDefault ? [0] : _defaults;
        init => _defaults = value;
    }

    /// <summary>The same for an elementary type.</summary>
    public long Default => Defaults[0];

    /// <summary>Whether every value of one is a value of the other: one name for it, or the same shape of the same elements.</summary>
    public bool IsSameAs(DataType other) =>
        ReferenceEquals(this, other)
        || (Family == other.Family
            && (Family switch
            {
                TypeFamily.Array => Dimensions.SequenceEqual(other.Dimensions) && Element!.IsSameAs(other.Element!),
                TypeFamily.Structure => ReferenceEquals(Base, other.Base),
                _ => Base == other.Base && Range == other.Range,
            }));

    public override string ToString() => Name;
}
