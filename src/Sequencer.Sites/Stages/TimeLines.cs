using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json.Nodes;
using Sequencer.Language.Programs;
using Sequencer.Language.Rules.Analysis;
using Sequencer.Language.Units;

namespace Sequencer.Sites.Stages;

/// <summary>How long each unit's procedure and sections are expected to take, and may take at most.</summary>
internal static class TimeLines
{
    public static IEnumerable<string> Of(UnitProgram unit, ImmutableArray<StateTime> times) => times.Select(time =>
        $"{unit.Name} {Sections.Word(time.State)}: {string.Join("; ", new[] { Expected(time), Most(time) }.OfType<string>())}");

    public static JsonArray Json(UnitProgram unit, ImmutableArray<StateTime> times) =>
    [
        .. times.Select(time => new JsonObject
        {
            ["unit"] = unit.Name,
            ["state"] = time.State.ToString(),
            ["mostMilliseconds"] = time.Most,
            ["unbounded"] = time.Unbounded,
            ["expectedMilliseconds"] = time.Expected > 0 ? time.Expected : null,
        }),
    ];

    private static string? Expected(StateTime time) => time.Expected == 0 ? null
        : $"expected {new Duration(time.Expected).InParts()}" + (time.Unsaid == 0 ? "" : string.Create(CultureInfo.InvariantCulture, $" ({time.Unsaid} {(time.Unsaid == 1 ? "step says" : "steps say")} nothing)"));

    private static string Most(StateTime time) => time.Most is not { } most ? $"no longest time: {time.Unbounded}"
        : time.State == ProceduralState.Running ? $"at most {new Duration(most).InParts()} without a hold"
        : $"at most {new Duration(most).InParts()}";
}
