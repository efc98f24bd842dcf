using System.Globalization;
using Sequencer.Language.Programs;

namespace Sequencer.Export.Writing;

/// <summary>One unit as one function block.</summary>
internal static class UnitWriter
{
    public static UnitText Write(UnitProgram program, SiteProgram site)
    {
        UnitText unit = new(program, site);
        ClosingText.Declare(unit);
        OverrideText.Write(unit);
        CalibrationText.Write(unit);
        SignalText.Write(unit);
        StateMachineText.Commands(unit);
        FaultText.Write(unit);
        StateMachineText.Write(unit);
        PairText.Write(unit);
        StepText.Write(unit);
        ActionText.Write(unit);
        EmergencyFlag(unit);
        ProtectionText.Write(unit);
        AlarmText.Write(unit);
        ClosingText.Write(unit);
        ClaimText.Requests(unit);
        return unit;
    }

    public static void Print(TextLines text, UnitText unit, ExportHeader header)
    {
        DeclarationText.Steps(text, unit);
        text.Blank();
        text.Comment($"{unit.Unit.Name} \"{unit.Unit.Title}\", from {Path.GetFileName(unit.Unit.Source.Path)}, revision {header.Revision}");
        text.Comment($"meaning {header.MeaningHash}");
        text.Comment(FormattableString.Invariant($"call it once every {unit.ScanMilliseconds} ms: its clocks count scans"));
        foreach (RequirementClause requirement in unit.Unit.Requirements)
        {
            text.Trace(requirement.Span, $"require {requirement.Name} \"{requirement.Title}\": {requirement.Statement}");
        }

        text.Add($"FUNCTION_BLOCK {unit.BlockName}");
        DeclarationText.Variables(text, unit);
        TextLines head = new();
        ClosingText.KeepBefores(unit, head);
        foreach (string line in (head.ToString() + unit.Body).Split('\n', StringSplitOptions.None).SkipLast(1))
        {
            text.Add(line);
        }

        text.Blank();
        text.Add("END_FUNCTION_BLOCK");
    }

    /// <summary>Emergency values follow latched emergency trips alone, not what else asks for an emergency.</summary>
    private static void EmergencyFlag(UnitText unit)
    {
        IEnumerable<string> trips = unit.Unit.Trips
            .Where(trip => trip.Reaction == Reaction.Emergency).Select(trip => FaultText.Latched(unit, trip));
        string name = unit.Scratch($"{FaultText.Asks(Reaction.Emergency)}_Trip");
        unit.Body.Add(string.Create(CultureInfo.InvariantCulture, $"{name} := {UnitText.Bracketed(trips, "OR", "FALSE")};"));
    }
}
