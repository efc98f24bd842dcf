using Sequencer.Language.Programs;

namespace Sequencer.Export.Writing;

/// <summary>Actions that have a share of the batch, and actions that begin anew at each edge.</summary>
internal static class ShareText
{
    public static string Given(UnitText unit, DriveAction drive, string path) => unit.Counter(
        VariableSection.Retained, $"{path}.given", unit.Scans(drive.For.GetValueOrDefault()), $"scans of its share of the batch that {drive.Output.Tag} has had");

    public static string SinceEdge(UnitText unit, Step step, DriveAction drive, EdgeFact edge, string path)
    {
        TextLines body = unit.Body;
        long scans = unit.Scans(drive.For.GetValueOrDefault());
        string left = unit.Counter(VariableSection.Kept, $"{path}.left", scans, $"scans left since the last edge for {drive.Output.Tag}");
        string begins = unit.Scratch($"{path}.begins");
        string acts = unit.Scratch($"{path}.acts");
        string came = unit.Conditions.Surely(edge, new ConditionSite($"{path}.each", step: step));
        body.Trace(edge.Span, $"step {step.Number}: {drive.Output.Tag} for {DurationText.Of(drive.For.GetValueOrDefault())} from each edge");
        body.Add($"{begins} := {came};");
        body.Add($"IF {unit.Entered(step.Number)} OR (NOT ({unit.StepNow(step.Number)} AND {unit.Works(step)})) THEN {left} := 0; END_IF;");
        body.Add($"{acts} := {begins} OR ({left} > 0);");
        body.Add(FormattableString.Invariant($"IF {begins} THEN {left} := {scans}; END_IF;"));
        body.Add($"IF NOT ({unit.StepNow(step.Number)} AND {unit.Works(step)}) THEN {left} := 0; END_IF;");
        body.Add($"IF {left} > 0 THEN {left} := {left} - 1; END_IF;");
        return acts;
    }

    /// <summary>At the end of the scan.</summary>
    public static void Count(UnitText unit, Step step)
    {
        foreach ((DriveAction drive, string path) in ActionText.Paths(step))
        {
            if (drive is not { OnceABatch: true, For: { } share })
            {
                continue;
            }

            string given = Given(unit, drive, path);
            string output = unit.Names.Of(drive.Output.Tag);
            unit.Body.Open($"IF {unit.Names.Of("started")} THEN");
            unit.Body.Add($"{given} := 0;");
            unit.Body.Else($"ELSIF {unit.StepNow(step.Number)} AND {(drive.On ? output : $"(NOT {output})")} THEN");
            unit.Body.Add(UnitText.CountUp(given, unit.Scans(share)));
            unit.Body.Close("END_IF;");
        }
    }
}
