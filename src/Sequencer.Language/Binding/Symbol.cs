using Sequencer.Language.Syntax;
using Sequencer.Text;

namespace Sequencer.Language.Binding;

/// <summary>
/// A declared name; <see cref="Syntax"/> is null for the unit itself, <see cref="Unit"/> for what the unit declares that
/// uses the name.
/// </summary>
internal sealed record Symbol(string Name, SymbolKind Kind, DeclarationSyntax? Syntax, LinePlace Place, SourceSpan Span, string? Unit = null)
{
    /// <summary>The name as the unit that uses it writes it.</summary>
    public string FullName => Unit is null ? Name : Programs.QualifiedName.Of(Unit, Name);

    /// <summary>What other units may read.</summary>
    public bool IsPublished => IsOutput || Kind is SymbolKind.AnalogueInput or SymbolKind.SwitchInput or SymbolKind.Latch or SymbolKind.Count or SymbolKind.Fact or SymbolKind.Trip or SymbolKind.Shared;

    public bool IsOutput => Kind is SymbolKind.Valve or SymbolKind.Motor;

    public static SymbolKind KindOf(DeclarationSyntax syntax) => syntax switch
    {
        AnalogueInputSyntax => SymbolKind.AnalogueInput,
        SwitchInputSyntax => SymbolKind.SwitchInput,
        OutputSyntax { Kind.Text: "valve" } => SymbolKind.Valve,
        OutputSyntax => SymbolKind.Motor,
        AnalogueOutputSyntax => SymbolKind.AnalogueOutput,
        ReagentSyntax => SymbolKind.Reagent,
        ParameterSyntax => SymbolKind.Parameter,
        LatchSyntax => SymbolKind.Latch,
        CountSyntax => SymbolKind.Count,
        RealSyntax => SymbolKind.Real,
        VotedSyntax => SymbolKind.Vote,
        PairSyntax => SymbolKind.Pair,
        GroupSyntax => SymbolKind.Group,
        SharedSyntax => SymbolKind.Shared,
        FactSyntax => SymbolKind.Fact,
        InterlockSyntax or ExclusionSyntax => SymbolKind.Interlock,
        PermissiveSyntax => SymbolKind.Permissive,
        TripSyntax => SymbolKind.Trip,
        AlarmSyntax => SymbolKind.Alarm,
        AssumeSyntax => SymbolKind.Assumption,
        RequireSyntax => SymbolKind.Requirement,
        EquipmentSyntax => SymbolKind.Equipment,
        _ => throw new System.Diagnostics.UnreachableException(syntax.GetType().Name),
    };
}
