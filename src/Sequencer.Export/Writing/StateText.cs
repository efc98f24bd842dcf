using Sequencer.Language.Programs;

namespace Sequencer.Export.Writing;

/// <summary>The states of IEC 61512-1 as values of an enumerated type.</summary>
internal static class StateText
{
    public const string Type = "PROCEDURAL_STATE";

    public static string Value(ProceduralState state) => $"STATE_{state.ToString().ToUpperInvariant()}";

    public static string OneOf(string variable, params IEnumerable<ProceduralState> states) =>
        UnitText.Bracketed(states.Select(state => $"({variable} = {Value(state)})"), "OR", "FALSE");
}
