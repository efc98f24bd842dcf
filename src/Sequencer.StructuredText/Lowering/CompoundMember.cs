using System.Collections.Immutable;
using Sequencer.Control.TransitionSystems;
using Sequencer.StructuredText.Syntax;
using Sequencer.StructuredText.Types;
using Sequencer.Text;

namespace Sequencer.StructuredText.Lowering;

/// <summary>An array or a structure: its elements or fields are variables of their own.</summary>
internal sealed class CompoundMember : Member
{
    public CompoundMember(string name, DataType? type, ImmutableArray<IntegerRange> dimensions, ImmutableArray<Member> parts, VariableSectionKind section, Origin origin)
        : base(section, origin)
    {
        Name = name;
        Type = type;
        Dimensions = dimensions;
        Parts = parts;
    }

    public string Name { get; }

    /// <summary>Null for an array of blocks.</summary>
    public DataType? Type { get; }

    /// <summary>The index ranges of an array; empty for a structure.</summary>
    public ImmutableArray<IntegerRange> Dimensions { get; }

    /// <summary>Fields in written order, or elements with the last index counting fastest.</summary>
    public ImmutableArray<Member> Parts { get; }

    public Member? Field(string name)
    {
        int place = Type?.Fields.ToList().FindIndex(field => string.Equals(field.Name, name, StringComparison.OrdinalIgnoreCase)) ?? -1;
        return place < 0 ? null : Parts[place];
    }
}
