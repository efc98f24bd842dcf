using System.Globalization;
using Sequencer.Language.Programs;

namespace Sequencer.Export.Writing;

/// <summary>Prompts: what is late is judged with the faults, answers are taken when the situation of the scan is known.</summary>
internal static class PromptText
{
    public static string Answer(UnitText unit, string prompt)
    {
        PromptAction action = unit.Unit.Steps.SelectMany(step => step.Actions).OfType<PromptAction>().First(action => action.Name == prompt);
        return unit.Counter(VariableSection.Retained, $"{prompt}.answer", action.Answers.Length, $"0: none yet; {Answers(action)}");
    }

    public static string Late(UnitText unit, PromptAction prompt) => unit.Scratch($"{prompt.Name}.late");

    public static void Judge(UnitText unit, PromptAction prompt)
    {
        unit.Body.Clause(prompt.Span, "is the answer late?");
        unit.Body.Add(FormattableString.Invariant($"{Late(unit, prompt)} := {Asks(unit, prompt)} AND ({Clock(unit, prompt)} >= {unit.Scans(prompt.Limit)});"));
    }

    /// <summary>Until here conditions see the answer as it was at the start of the scan.</summary>
    public static void Finish(UnitText unit)
    {
        foreach (PromptAction prompt in unit.Unit.Steps.SelectMany(step => step.Actions).OfType<PromptAction>())
        {
            unit.Body.Add($"{Answer(unit, prompt.Name)} := {AnswerNow(unit, prompt)};");
        }
    }

    public static void Write(UnitText unit, Step step, PromptAction prompt)
    {
        TextLines body = unit.Body;
        string input = unit.Declare(VariableSection.Input, $"{prompt.Name}.input", "DINT", null, $"{prompt.Role}: answer to {prompt.Question} {Answers(prompt)}");
        string before = unit.Flag(VariableSection.Kept, $"{prompt.Name}.pressed", "an answer was pressed in the scan before", initial: true);
        string pressed = unit.Scratch($"{prompt.Name}.pressed_now");
        string answer = Answer(unit, prompt.Name);
        string now = AnswerNow(unit, prompt);
        string asks = Asks(unit, prompt);
        string clock = Clock(unit, prompt);
        string running = $"(State_Now = {StateText.Value(ProceduralState.Running)})";
        body.Trace(prompt.Span, $"prompt {prompt.Name} \"{prompt.Question}\" for {prompt.Role}");
        body.Add(FormattableString.Invariant($"{pressed} := ({input} >= 1) AND ({input} <= {prompt.Answers.Length});"));
        body.Add($"{now} := {answer};");
        body.Open($"IF {unit.Entered(step.Number)} OR {unit.Names.Of("started")} THEN");
        body.Add($"{now} := 0;");
        body.Add($"{clock} := 0;");
        body.Else($"ELSIF {asks} AND {pressed} AND (NOT {before}) THEN");
        body.Add(FormattableString.Invariant($"{now} := LIMIT(0, {input}, {prompt.Answers.Length});"));
        body.Close("END_IF;");
        body.Add($"{before} := {pressed};");
        body.Add($"{asks} := {unit.StepNow(step.Number)} AND {running} AND ({now} = 0);");
        body.Add($"IF {unit.Names.Of("restarted")} THEN {clock} := 0; END_IF;");
        body.Open($"IF {asks} THEN");
        body.Add(UnitText.CountUp(clock, unit.Scans(prompt.Limit)));
        body.Close("END_IF;");
    }

    private static string AnswerNow(UnitText unit, PromptAction prompt) =>
        unit.Scratch($"{prompt.Name}.answer_now", UnitText.Range(0, prompt.Answers.Length));

    private static string Asks(UnitText unit, PromptAction prompt) => unit.Flag(VariableSection.Kept, $"{prompt.Name}.asks", $"asked now: {prompt.Question}");

    private static string Clock(UnitText unit, PromptAction prompt) =>
        unit.Counter(VariableSection.Retained, $"{prompt.Name}.clock", unit.Scans(prompt.Limit), "scans without an answer");

    private static string Answers(PromptAction prompt) => string.Join(
        ", ", prompt.Answers.Select((answer, index) => string.Create(CultureInfo.InvariantCulture, $"{index + 1}: {answer}")));
}
