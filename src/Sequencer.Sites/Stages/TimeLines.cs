using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json.Nodes;
using Sequencer.Language.Programs;
using Sequencer.Language.Rules.Analysis;

namespace Sequencer.Sites.Stages;

/// <summary>How long each unit's procedure and sections are expected to take, and may take at most.</summary>
internal static class TimeLines
{
    private static readonly (long Milliseconds, string Symbol)[] Units = [(3_600_000, "h"), (60_000, "min"), (1_000, "s"), (1, "ms")];

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
        : $"expected {Words(time.Expected)}" + (time.Unsaid == 0 ? "" : string.Create(CultureInfo.InvariantCulture, $" ({time.Unsaid} {(time.Unsaid == 1 ? "step says" : "steps say")} nothing)"));

    private static string Most(StateTime time) => time.Most is not { } most ? $"no longest time: {time.Unbounded}"
        : time.State == ProceduralState.Running ? $"at most {Words(most)} without a hold"
        : $"at most {Words(most)}";

    /// <summary>As <c>1 h 34 min</c>.</summary>
    private static string Words(long milliseconds)
    {
        List<string> words = [];
        foreach ((long size, string symbol) in Units)
        {
            if (milliseconds >= size)
            {
                words.Add(string.Create(CultureInfo.InvariantCulture, $"{milliseconds / size} {symbol}"));
                milliseconds %= size;
            }
        }

        return string.Join(' ', words);
    }
}
