using Sequencer.Language.Programs;

namespace Sequencer.Export.Writing;

/// <summary>Units that start one another: the request, and the answer.</summary>
internal static class StartText
{
    /// <summary>Some unit asks for a start that has not been taken; null where none may ask.</summary>
    public static string? Wanted(UnitText unit)
    {
        if (unit.Unit.Askers.IsEmpty)
        {
            return null;
        }

        string wanted = unit.Scratch("start.wanted");
        unit.Body.Trace(unit.Unit.Askers[0].Span, "start asked by other units, each request taken once");
        unit.Body.Add($"{wanted} := {UnitText.Bracketed(unit.Unit.Askers.Select(asker => $"({Starts(unit, asker)} AND (NOT {Taken(unit, asker)}))"), "OR", "FALSE")};");
        return wanted;
    }

    /// <summary>A start is asked for, by the operator or by another unit, in a state that lets it begin.</summary>
    public static string Asked(UnitText unit)
    {
        string edge = unit.Names.Of("start.edge");
        string idle = $"(State_At_Start = {StateText.Value(ProceduralState.Idle)})";
        if (unit.Unit.Askers.IsEmpty)
        {
            return $"{edge} AND {idle}";
        }

        string wanted = unit.Names.Of("start.wanted");
        string complete = $"(State_At_Start = {StateText.Value(ProceduralState.Complete)})";
        return $"((({edge} OR {wanted}) AND {idle}) OR ({wanted} AND {complete}))";
    }

    public static string TakenBy(UnitText unit, string asked) => unit.Seen.Request(asked, $"asked.{unit.Unit.Name}.taken", retained: true);

    public static void Finish(UnitText unit)
    {
        foreach (string asked in unit.Unit.AskedUnits)
        {
            Step[] steps = [.. unit.Unit.Steps.Where(step => step.Asks.Any(ask => ask.Unit == asked))];
            string stands = unit.Flag(VariableSection.Retained, $"ask.{asked}.stands", $"{asked} is asked to start");
            string starts = unit.Flag(VariableSection.Kept, $"ask.{asked}.starts", $"{asked} is to start now");
            unit.Body.Comment($"{asked} is asked to start while a step wants it.");
            unit.Body.Add($"{stands} := {UnitText.Bracketed(steps.Select(step => IsActive(unit, step)), "OR", "FALSE")};");
            unit.Body.Add($"{starts} := {UnitText.Bracketed(steps.Select(step => $"({IsActive(unit, step)} AND {unit.Works(step)})"), "OR", "FALSE")};");
        }

        foreach (Asker asker in unit.Unit.Askers)
        {
            string taken = Taken(unit, asker);
            string stands = unit.Seen.Request(asker.Unit, $"ask.{unit.Unit.Name}.stands", retained: true);
            unit.Body.Add($"{taken} := {stands} AND ({taken} OR ({unit.Names.Of("started")} AND {Starts(unit, asker)}));");
        }
    }

    private static string IsActive(UnitText unit, Step step) =>
        step.OnlyIf is null ? unit.StepNow(step.Number) : $"({unit.StepNow(step.Number)} AND (NOT {StepText.PassedOver(unit, step)}))";

    private static string Starts(UnitText unit, Asker asker) => unit.Seen.Request(asker.Unit, $"ask.{unit.Unit.Name}.starts", retained: false);

    private static string Taken(UnitText unit, Asker asker) =>
        unit.Flag(VariableSection.Retained, $"asked.{asker.Unit}.taken", $"the start that {asker.Unit} asks for has been taken");
}
