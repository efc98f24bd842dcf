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
    Count,
    Real,
    Vote,
    Pair,
    Group,
    Shared,
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
