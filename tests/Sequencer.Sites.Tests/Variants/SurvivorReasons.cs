using System.Collections.Immutable;
using System.Text.RegularExpressions;

namespace Sequencer.Sites.Tests.Variants;

/// <summary>
/// Why a broken program passes everything: because it does the same, because it is only more careful, or because nothing
/// asks for what was lost. The last are the gaps to know of.
/// </summary>
internal static class SurvivorReasons
{
    private static readonly ImmutableArray<(string Name, string Reason)> Reasons =
    [
        ("^output AG301: clause left out `while not", "gap: the agitator runs on in an empty pit; no requirement asks that it stops"),
        ("^interlock I1: sense reversed `until not` to `until`", "gap: the inlet stays blocked after a high level until the next one; no scenario fills a pit twice"),
        ("^step 20, go: part of a condition left out", "the same but for seconds: an interlock waits for the other fact in the next steps"),
        ("^step 40, dose P303: line left out", "gap: no scenario brings the pit above its window, so the fine acid is never wanted"),
        ("^input .*clause left out `(bad|on|off) after", "more careful: what the filter would ride out now counts at once; no scenario has a contact that chatters"),
        ("^input AT201.*`P205 and`", "the same for every requirement: the flow switch of the loop says more than the pump's command"),
        ("^output .*clause left out `confirm", "gap: no scenario breaks this device, and no requirement names its discrepancy"),
        ("^latch .*clause left out `retained`", "gap: no scenario loses power while the latch is set"),
        ("^latch LIME_IN_LINE: value ten times", "the same for every requirement: the latch only raises an alarm, and later here"),
        ("^latch RELEASED", "gap: the release is later or earlier than it should be; what it needs is still needed"),
        ("^interlock .*(`and not LSH+\\d+`|`and not` to `and`)", "the same for every requirement: the release is asked for only where the cause has gone, which says that much itself"),
        ("^interlock I3: clause left out `, 60 s between`", "gap: the requirement is that they never run together; the rest between is for the pipework"),
        ("^interlock I4: clause left out `, 30 s between`", "gap: the requirement is that they never run together; the rest between is for the pipework"),
        ("^interlock .*value ten times", "more careful: the protection holds longer before it lets go"),
        ("^interlock .*and reset", "gap: the protection lets go by itself; no requirement asks for the operator"),
        ("^interlock .*line left out|^interlock .*device left out", "the same for every requirement: another protection forbids it too"),
        ("^permissive", "gap: no scenario has the valve open at the start, and no requirement names it"),
        ("^trip T\\d: clause left out `stays", "more careful: the trip comes at once"),
        ("^trip T\\d: value ten times", "gap: the trip comes later; what it stops is stopped by interlocks before"),
        ("^alarm", "gap: an alarm is in no requirement, and the scenarios ask only that it comes"),
        ("^after: line left out", "the same: Held after a loss of power is what the language does by itself"),
        ("^after:", "gap: no scenario judges how long a restart waits"),
        ("^start", "gap: no scenario starts on a tank that is not empty; the protections against too high a level stand"),
        ("run \\w+: clause left out `after|run \\w+: value ten times", "the same but for seconds: the pump waits for its valve by an interlock anyway"),
        ("run \\w+: line left out|run \\w+: neighbouring device `run \\w+` to `run (P205|P207|AG\\d+)`", "the same: the machine runs at rest too while there is liquid, and another that is blocked or wanted anyway does nothing more"),
        ("go: clause left out `after the last pulse`", "the same in the scenarios: the wait after a pulse is as long as the reading must stay"),
        ("go: value ten times|go: clause left out", "gap: the step lasts longer or shorter within what the scenarios allow"),
        ("dose .*clause left out", "gap: the dose is coarser; in the scenarios it still ends inside the band"),
        ("dose .*value ten times", "gap: the dose is less careful; in the scenarios it still ends inside the band and its limits"),
        ("limit: value ten times", "gap: the limit is never reached in a scenario"),
    ];

    /// <summary>Null where none is known.</summary>
    public static string? Of(Variant variant) => Reasons.FirstOrDefault(reason => Regex.IsMatch(variant.Name, reason.Name)).Reason;
}
