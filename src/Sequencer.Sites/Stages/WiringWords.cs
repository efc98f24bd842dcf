using System.Globalization;
using System.Text.Json.Nodes;
using Sequencer.Export.Wiring;

namespace Sequencer.Sites.Stages;

/// <summary>What a report says of the program around the blocks.</summary>
internal static class WiringWords
{
    public static Outcome Judge(WiringResult result) => result switch
    {
        WiredAsDeclared => Outcome.Holds,
        WiredOtherwise => Outcome.Fails,
        _ => Outcome.Undecided,
    };

    public static IEnumerable<string> Of(WiringResult result) => result switch
    {
        WiredAsDeclared wired =>
        [
            string.Create(
                CultureInfo.InvariantCulture,
                $"the program around the blocks: {wired.Points} signals from and to their addresses, {wired.Operated} inputs of the operator's station, each loop tried with all {wired.Counts} currents: as the site declares them"),
        ],
        WiredOtherwise otherwise => ["the program around the blocks is not wired as the site declares:", .. otherwise.Faults.Select(fault => $"  {fault}")],
        WiringUndecided undecided => [$"the program around the blocks: undecided: {undecided.Reason}"],
        _ => throw new System.Diagnostics.UnreachableException($"no words for {result.GetType().Name}"),
    };

    public static JsonObject Json(WiringResult result) => new()
    {
        ["verdict"] = result switch
        {
            WiredAsDeclared => "as declared",
            WiredOtherwise => "otherwise",
            _ => "undecided",
        },
        ["words"] = string.Join('\n', Of(result)),
    };
}
