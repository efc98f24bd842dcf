using Sequencer.Control.TransitionSystems;
using Sequencer.StructuredText.Syntax;
using Sequencer.StructuredText.Types;
using Sequencer.Text;

namespace Sequencer.StructuredText.Lowering;

/// <summary>One elementary variable, under its full name (<c>R101.state</c>).</summary>
internal sealed class Slot : Member
{
    public Slot(string name, DataType type, SlotRole role, VariableSectionKind section, Origin origin)
        : base(section, origin)
    {
        Name = name;
        Type = type;
        Role = role;
    }

    public string Name { get; }

    public DataType Type { get; }

    public SlotRole Role { get; }

    public long Initial { get; init; }

    public bool Retained { get; init; }

    /// <summary>Its value at the start of a scan; null for a VAR_TEMP, which has none.</summary>
    public Expression? Entry { get; init; }

    /// <summary>Where it stands in the controller, as <see cref="DirectAddress.Canonical"/> writes it; null for a variable without an address.</summary>
    public string? Address { get; init; }

    public bool IsAssigned { get; set; }

    /// <summary>For a global: something that was read names it. One that nothing names is no part of what is read.</summary>
    public bool IsNamed { get; set; }

    /// <summary>True inside the FOR that counts with it.</summary>
    public bool IsCounting { get; set; }
}
