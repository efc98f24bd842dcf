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
    private const long Second = 1_000;
    private const long Minute = 60 * Second;
    private const long Hour = 60 * Minute;
    private const long Year = 365 * 24 * Hour;

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
        : $"{Bound(most)}{(time.State == ProceduralState.Running ? " without a hold" : "")}";

    /// <summary>A bound is still one when it is rounded up: to a minute from an hour on, to a second from a minute on. One of years is of no use to anybody.</summary>
    private static string Bound(long milliseconds) =>
        milliseconds > Year ? "may go on for more than a year"
        : $"at most {new Duration(Up(milliseconds, milliseconds > Hour ? Minute : milliseconds > Minute ? Second : 1)).InParts()}";

    private static long Up(long milliseconds, long to) => (milliseconds + to - 1) / to * to;
}
