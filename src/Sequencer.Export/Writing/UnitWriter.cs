using System.Globalization;
using Sequencer.Language.Programs;

namespace Sequencer.Export.Writing;

/// <summary>One unit as one function block.</summary>
internal static class UnitWriter
{
    public static UnitText Write(UnitProgram program, SiteProgram site, TextDialect dialect)
    {
        UnitText unit = new(program, site, dialect);
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

    /// <summary>The unit's steps as a type, and its block, under one head.</summary>
    public static TextBlock Block(UnitText unit)
    {
        IEnumerable<string> origin =
        [
            .. ClausePlaces.Files(unit.Unit).SelectMany(BlockHead.File),
            .. ClausePlaces.Words(unit.Unit).Select(words => $"line of   {words}"),
        ];
        return new TextBlock($"{unit.BlockName}  {unit.Unit.Title}", origin, Lines(unit));
    }

    private static TextLines Lines(UnitText unit)
    {
        TextLines text = new();
        text.Comment(FormattableString.Invariant($"Call it once in every scan of {unit.ScanMilliseconds} ms: its clocks count scans."));
        foreach (RequirementClause requirement in unit.Unit.Requirements)
        {
            text.Clause(requirement.Span);
        }

        if (unit.Dialect.States == StateForm.Enumerated)
        {
            DeclarationText.Steps(text, unit);
            text.Blank();
        }

        text.Add($"FUNCTION_BLOCK {unit.BlockName}");
        DeclarationText.Variables(text, unit);
        ClosingText.KeepBefores(unit, text);
        text.Append(unit.Body);
        text.Blank();
        text.Add("END_FUNCTION_BLOCK");
        return text;
    }

    /// <summary>Emergency values follow latched emergency trips and the watch over memory alone, not what else asks for an emergency.</summary>
    private static void EmergencyFlag(UnitText unit)
    {
        IEnumerable<string> trips = unit.Unit.Trips
            .Where(trip => trip.Reaction == Reaction.Emergency).Select(trip => FaultText.Latched(unit, trip)).Prepend(MemoryText.Latched(unit));
        string name = unit.Scratch($"{FaultText.Asks(Reaction.Emergency)}_Trip");
        unit.Body.Add(string.Create(CultureInfo.InvariantCulture, $"{name} := {UnitText.Bracketed(trips, "OR", "FALSE")};"));
    }
}
