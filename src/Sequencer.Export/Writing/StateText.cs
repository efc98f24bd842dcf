using Sequencer.Language.Programs;

namespace Sequencer.Export.Writing;

/// <summary>The states of IEC 61512-1 as values of an enumerated type.</summary>
internal static class StateText
{
    public const string TypeName = "PROCEDURAL_STATE";

    /// <summary>The type of a variable that holds a state.</summary>
    public static string Type(TextDialect dialect) => dialect.Type(TypeName, (int)Enum.GetValues<ProceduralState>().Max());

    /// <summary>The state that a unit is in at first.</summary>
    public static string First(TextDialect dialect) => dialect.Literal(Value(ProceduralState.Idle), (int)ProceduralState.Idle);

    public static string Value(ProceduralState state) => $"STATE_{state.ToString().ToUpperInvariant()}";

    public static string OneOf(string variable, params IEnumerable<ProceduralState> states) =>
        UnitText.Bracketed(states.Select(state => $"({variable} = {Value(state)})"), "OR", "FALSE");
}
