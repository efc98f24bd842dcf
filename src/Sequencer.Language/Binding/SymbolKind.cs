namespace Sequencer.Language.Binding;

internal enum SymbolKind
{
    Unit,
    AnalogueInput,
    SwitchInput,
    Valve,
    Motor,
    AnalogueOutput,
    Reagent,
    Parameter,
    Latch,
    Vote,
    Pair,
    Group,
    Fact,
    Interlock,
    Permissive,
    Trip,
    Alarm,
    Assumption,
    Requirement,
    Equipment,
    Prompt,
}
