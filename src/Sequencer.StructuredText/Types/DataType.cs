using System.Collections.Immutable;
using Sequencer.Control.TransitionSystems;

namespace Sequencer.StructuredText.Types;

/// <summary>
/// A type of values. A subrange has the <see cref="Base"/> it narrows; every other type is its own base.
/// </summary>
internal sealed class DataType
{
    private readonly DataType? _base;

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

    public Sort Sort => Family == TypeFamily.Boolean ? Sort.Boolean : Sort.Integer;

    /// <summary>The value of a variable without an initial one (second edition, 2.4.3.1, from memory): 0, or the bound nearest it.</summary>
    public long Default { get; init; }

    public override string ToString() => Name;
}
