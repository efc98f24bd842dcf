using Sequencer.Language.Programs;

namespace Sequencer.Language.Rules.Analysis;

/// <summary>
/// What the letters before the number of a tag say (ISA-5.1: first letter the measured variable, then S
/// for a switch, then H, HH, L or LL). ES for an emergency stop and AG for an agitator are common
/// practice, no source.
/// </summary>
internal static class TagLetters
{
    public static bool IsLimitSwitch(string tag) => Letters(tag) is [_, 'S', 'H' or 'L'] or [_, 'S', 'H', 'H'] or [_, 'S', 'L', 'L'];

    public static bool IsEmergencyStop(string tag) => Letters(tag) is "ES";

    public static bool IsAgitator(string tag) => Letters(tag) is "AG";

    /// <summary>ZSO (position switch, open) of a valve and YS (state switch, running) of a motor, with the number of the device.</summary>
    public static bool ShowsStateOf(string tag, string device, OutputKind kind) =>
        Letters(tag) == (kind == OutputKind.Valve ? "ZSO" : "YS") && tag.Length > Letters(tag).Length && tag[Letters(tag).Length..] == device[Letters(device).Length..];

    private static string Letters(string tag) => new([.. tag.TakeWhile(char.IsAsciiLetter).Select(char.ToUpperInvariant)]);
}
