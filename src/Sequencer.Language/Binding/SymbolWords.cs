namespace Sequencer.Language.Binding;

/// <summary>Kinds of names as a person says them.</summary>
internal static class SymbolWords
{
    public static string InWords(this SymbolKind kind) => kind switch
    {
        SymbolKind.Unit => "the unit itself",
        SymbolKind.AnalogueInput => "a measured input",
        SymbolKind.SwitchInput => "a switch",
        SymbolKind.Valve => "a valve",
        SymbolKind.Motor => "a motor",
        SymbolKind.AnalogueOutput => "an analogue output",
        SymbolKind.Reagent => "a reagent",
        SymbolKind.Parameter => "a parameter",
        SymbolKind.Latch => "a latch",
        SymbolKind.Count => "a count",
        SymbolKind.Real => "what is truly so in the plant",
        SymbolKind.Vote => "a vote",
        SymbolKind.Pair => "a pair of devices",
        SymbolKind.Group => "a group of protections",
        SymbolKind.Shared => "shared equipment",
        SymbolKind.Fact => "a published fact",
        SymbolKind.Interlock => "an interlock",
        SymbolKind.Permissive => "a permissive",
        SymbolKind.Trip => "a trip",
        SymbolKind.Alarm => "an alarm",
        SymbolKind.Assumption => "an assumption",
        SymbolKind.Requirement => "a requirement",
        SymbolKind.Equipment => "equipment made from a module",
        SymbolKind.Prompt => "a prompt",
        _ => throw new System.Diagnostics.UnreachableException($"kind {kind}"),
    };
}
