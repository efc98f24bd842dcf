using Sequencer.Language.Programs;

namespace Sequencer.Export.Writing;

/// <summary>Section 0: protections that the operator has taken out of force, one at a time, for a time.</summary>
internal static class OverrideText
{
    public static void Write(UnitText unit)
    {
        if (unit.Unit.Overrides.IsEmpty)
        {
            return;
        }

        unit.Body.Section("0  Overrides: one at a time, for its time only");
        TimedCommandText[] all = [.. unit.Unit.Overrides.Select(waiver => new TimedCommandText(
            Path(waiver.Protection), waiver.Role, unit.Scans(waiver.AtMost), $"override {waiver.Protection}", waiver.Span, $"override of {waiver.Protection}, at most {waiver.AtMost}: {waiver.Reason}"))];
        foreach (TimedCommandText timed in all)
        {
            TimedCommandText.Command(unit, timed);
        }

        for (int index = 0; index < all.Length; index++)
        {
            TimedCommandText.Decide(unit, all, index);
        }
    }

    /// <summary>The protection is overridden in this scan; null where nothing may override it.</summary>
    public static string? Active(UnitText unit, string protection) =>
        unit.Unit.Overrides.Any(waiver => waiver.Protection == protection) ? TimedCommandText.InForce(unit, Path(protection)) : null;

    public static void Alarms(UnitText unit, Action<string, string, string> raise)
    {
        foreach (Override waiver in unit.Unit.Overrides)
        {
            TimedCommandText.Alarms(unit, Path(waiver.Protection), (waiver.IsActiveInWords(), waiver.HasExpiredInWords(), waiver.IsRefusedInWords()), raise);
        }
    }

    private static string Path(string protection) => $"{protection}.override";
}
