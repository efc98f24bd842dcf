using Sequencer.Language.Programs;

namespace Sequencer.Export.Writing;

/// <summary>Values put in place of readings, one at a time, for a time, while the unit is Idle.</summary>
internal static class CalibrationText
{
    public static void Write(UnitText unit)
    {
        if (unit.Unit.Calibrations.IsEmpty)
        {
            return;
        }

        unit.Body.Section("0  Calibration: a value in place of a reading, for its time, while the unit is Idle");
        TimedCommandText[] all = [.. unit.Unit.Calibrations.Select(calibration => new TimedCommandText(
            Path(calibration.Input), calibration.Role, unit.Scans(calibration.AtMost), $"calibrate {calibration.Input.Tag}", calibration.Span, $"calibration of {calibration.Input.Tag}, at most {calibration.AtMost}: {calibration.Reason}"))];
        string idle = Idle(unit);
        foreach (TimedCommandText timed in all)
        {
            TimedCommandText.Command(unit, timed);
        }

        for (int index = 0; index < all.Length; index++)
        {
            TimedCommandText.Decide(unit, all, index, idle);
        }
    }

    /// <summary>The reading has a value put in its place in this scan; null where none may be.</summary>
    public static string? Active(UnitText unit, AnalogueInput input) =>
        unit.Unit.Calibrations.Any(calibration => calibration.Input.Tag == input.Tag) ? TimedCommandText.InForce(unit, Path(input)) : null;

    /// <summary>Some reading is being calibrated; null where none may be.</summary>
    public static string? Any(UnitText unit) => unit.Unit.Calibrations.IsEmpty
        ? null
        : UnitText.Bracketed(unit.Unit.Calibrations.Select(calibration => TimedCommandText.InForce(unit, Path(calibration.Input))), "OR", "FALSE");

    public static void Alarms(UnitText unit, Action<string, string, string> raise)
    {
        foreach (Calibration calibration in unit.Unit.Calibrations)
        {
            TimedCommandText.Alarms(unit, Path(calibration.Input), (calibration.IsActiveInWords(), calibration.HasExpiredInWords(), calibration.IsRefusedInWords()), raise);
        }
    }

    /// <summary>At the end of the scan, when the state has moved on.</summary>
    public static void Finish(UnitText unit)
    {
        if (!unit.Unit.Calibrations.IsEmpty)
        {
            unit.Body.Add($"{Idle(unit)} := ({unit.Names.Of("state")} = {StateText.Value(ProceduralState.Idle)});");
        }
    }

    private static string Idle(UnitText unit) => unit.Flag(VariableSection.Kept, "calibration.idle", "the unit was Idle at the end of the last scan");

    private static string Path(AnalogueInput input) => $"{input.Tag}.calibration";
}
