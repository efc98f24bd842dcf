using Sequencer.StructuredText.Syntax;
using Sequencer.StructuredText.Types;
using Sequencer.Text;

namespace Sequencer.StructuredText.Lowering;

/// <summary>What a name inside a program or a block instance stands for.</summary>
internal abstract class Member
{
    protected Member(VariableSectionKind section, Origin origin)
    {
        Section = section;
        Origin = origin;
    }

    public VariableSectionKind Section { get; }

    public Origin Origin { get; }

    /// <summary>The elementary variables in it, in written order; none of a block's.</summary>
    public IEnumerable<Slot> Leaves() => this switch
    {
        Slot slot => [slot],
        CompoundMember compound => compound.Parts.SelectMany(part => part.Leaves()),
        _ => [],
    };
}

/// <summary>A VAR_IN_OUT: another name for what the call in progress gives.</summary>
internal sealed class InOutMember : Member
{
    public InOutMember(DataType? type, string? block, Origin origin)
        : base(VariableSectionKind.InOut, origin)
    {
        Type = type;
        Block = block;
    }

    /// <summary>The type of its values, or null for an instance of <see cref="Block"/>.</summary>
    public DataType? Type { get; }

    public string? Block { get; }

    public Member? Bound { get; set; }
}
