using Sequencer.Language.Syntax;
using Sequencer.Text;

namespace Sequencer.Language.Binding;

/// <summary>A declared name; <see cref="Syntax"/> is null for the unit itself.</summary>
internal sealed record Symbol(string Name, SymbolKind Kind, DeclarationSyntax? Syntax, LinePlace Place, SourceSpan Span)
{
    public bool IsOutput => Kind is SymbolKind.Valve or SymbolKind.Motor;

    public static SymbolKind KindOf(DeclarationSyntax syntax) => syntax switch
    {
        AnalogueInputSyntax => SymbolKind.AnalogueInput,
        SwitchInputSyntax => SymbolKind.SwitchInput,
        OutputSyntax { Kind.Text: "valve" } => SymbolKind.Valve,
        OutputSyntax => SymbolKind.Motor,
        ReagentSyntax => SymbolKind.Reagent,
        ParameterSyntax => SymbolKind.Parameter,
        LatchSyntax => SymbolKind.Latch,
        GroupSyntax => SymbolKind.Group,
        InterlockSyntax or ExclusionSyntax => SymbolKind.Interlock,
        PermissiveSyntax => SymbolKind.Permissive,
        TripSyntax => SymbolKind.Trip,
        AlarmSyntax => SymbolKind.Alarm,
        AssumeSyntax => SymbolKind.Assumption,
        RequireSyntax => SymbolKind.Requirement,
        _ => throw new System.Diagnostics.UnreachableException(syntax.GetType().Name),
    };
}
