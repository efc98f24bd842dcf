using System.Globalization;
using Sequencer.Language.Programs;

namespace Sequencer.Export.Writing;

/// <summary>Section 10: what other units see of this one, when everything in it has moved on.</summary>
internal static class ShownText
{
    public static string Name(UnitText unit, SeenVariable variable) => unit.Declare(
        VariableSection.Shown, $"shown.{variable.Name}", variable.Type, null, $"{variable.Name}, for other units");

    public static void Write(UnitText unit, IReadOnlyCollection<SeenVariable> seen)
    {
        if (seen.Count == 0)
        {
            return;
        }

        unit.Body.Section("10  What other units see in the next scan");
        foreach (SeenVariable variable in seen)
        {
            string value = Value(unit, variable);
            unit.Body.Add($"{Name(unit, variable)} := {value};");
        }
    }

    private static string Value(UnitText unit, SeenVariable variable)
    {
        switch (variable.Kind)
        {
            case SeenKind.Reading:
                return unit.Names.Of($"{variable.Subject}.held");
            case SeenKind.Usable:
                string usable = unit.Names.Of($"{variable.Subject}.usable");
                AnalogueInput input = unit.Unit.AnalogueInputs.First(one => one.Tag == variable.Subject);
                return CalibrationText.Active(unit, input) is { } calibrated ? $"{usable} AND (NOT {calibrated})" : usable;
            case SeenKind.Total:
                return unit.Names.Of($"{variable.Subject}.total");
            case SeenKind.Discrepancy:
                return FaultText.Latched(unit, unit.Unit.Outputs.First(output => output.Tag == variable.Subject));
            case SeenKind.Trip:
                return FaultText.Latched(unit, unit.Unit.Trips.First(trip => trip.Name == variable.Subject));
            case SeenKind.Step:
                return unit.StepAtStart(int.Parse(variable.Subject, CultureInfo.InvariantCulture));
            case SeenKind.FactPossibly:
                return unit.Names.Of($"{variable.Subject}.possibly");
            default:
                return unit.Names.Of(variable.Subject);
        }
    }
}
