using Sequencer.Language.Programs;

namespace Sequencer.Export.Writing;

/// <summary>What steps keep for the batch report.</summary>
internal static class RecordText
{
    public static void Write(UnitText unit, Step step)
    {
        TextLines body = unit.Body;
        foreach ((RecordAction record, int number) in RecordAction.Of(step))
        {
            string path = FormattableString.Invariant($"step{step.Number}.record{number}");
            (long low, long high) = Range(record.Value);
            string kept = unit.Number(VariableSection.Retained, path, low, high, Math.Clamp(0, low, high), $"record: {record.Title}");
            string taken = unit.Flag(VariableSection.Retained, $"{path}.taken", $"record: {record.Title} is known");
            string started = unit.Names.Of("started");
            body.Trace(record.Span, $"step {step.Number}: record \"{record.Title}\"");
            body.Open($"IF {started} THEN");
            body.Add($"{taken} := FALSE;");
            body.Else($"ELSIF {unit.StepNow(step.Number)} AND {unit.Conditions.Usable(record.Value)} THEN");
            body.Add($"{kept} := {unit.Conditions.Steps(record.Value)};");
            body.Add($"{taken} := TRUE;");
            body.Close("END_IF;");
        }
    }

    private static (long Low, long High) Range(Quantity value) => value switch
    {
        ReadingQuantity reading => (reading.Input.Minimum, reading.Input.Maximum),
        ParameterQuantity parameter => (parameter.Parameter.Minimum, parameter.Parameter.Maximum),
        _ => (0, QuantityMeasure.LargestTotal),
    };
}
