using Sequencer.Control.TransitionSystems;
using Sequencer.Simulation.Loop;
using Sequencer.Text;

namespace Sequencer.Simulation.Scenarios;

/// <summary>Finds what a scenario names in a loop, and turns written values into the loop's numbers.</summary>
internal sealed class ScenarioNames(ClosedLoop loop, DiagnosticBag diagnostics)
{
    public UnitPlaces? Unit(string name, SourceSpan place) =>
        Found(loop.Units.FirstOrDefault(unit => unit.Name == name), place, "unit", name, loop.Units.Select(unit => unit.Name));

    public StepPlace? Step(string unit, string step, SourceSpan place) => Unit(unit, place) is UnitPlaces found
        ? Found(found.Steps.FirstOrDefault(candidate => candidate.Step == step), place, $"step of `{unit}`", step, found.Steps.Select(candidate => candidate.Step))
        : null;

    public int? Alarm(string name, SourceSpan place) =>
        Place(loop.System.Alarms, alarm => alarm.Name, "alarm", name, place);

    public int? Requirement(string name, SourceSpan place) =>
        Place(loop.System.Requirements, requirement => requirement.Name, "requirement", name, place);

    /// <summary>An input of the program, by its own name: of the plant's or of the operator's.</summary>
    public Variable? Input(string name, SourceSpan place) =>
        Found(loop.System.Inputs.FirstOrDefault(input => input.Name == name), place, "input", name, loop.System.Inputs.Select(input => input.Name));

    public int? Output(string name, SourceSpan place) =>
        Place(loop.System.Outputs, output => output.Name, "output", name, place);

    public int? Fault(string name, SourceSpan place) =>
        Place(loop.Plant.Faults, fault => fault.Name, "fault", name, place);

    public Variable? OperatorInput(string name, SourceSpan place)
    {
        Variable? input = loop.System.Inputs.FirstOrDefault(candidate => candidate.Name == name)
            ?? loop.System.Inputs.FirstOrDefault(candidate => candidate.Name == name + ".setting");
        if (input is not null && !loop.IsOperatorInput(input.Index))
        {
            diagnostics.Add(ScenarioDiagnostics.NotTheOperators(place, name));
            return null;
        }

        return Found(input, place, "operator's input", name, loop.System.Inputs.Where(candidate => loop.IsOperatorInput(candidate.Index)).Select(candidate => candidate.Name));
    }

    public Metadata.PromptMetadata? Prompt(string name, SourceSpan place) =>
        Found(loop.Site.Prompts.FirstOrDefault(prompt => prompt.Name == name), place, "prompt", name, loop.Site.Prompts.Select(prompt => prompt.Name));

    /// <summary>The number of an answer, from 1.</summary>
    public int? Answer(Metadata.PromptMetadata prompt, string answer, SourceSpan place) =>
        Place(prompt.Answers, words => words, $"answer to `{prompt.Name}`", answer, place) + 1;

    public ValueSource? Value(string name, SourceSpan place) =>
        Found(loop.Find(name), place, "value", name, loop.Names);

    /// <summary>The bound in the source's own unit.</summary>
    public double? InUnitOf(ValueSource source, Measure value, SourceSpan place)
    {
        if (Converted(value, source.Unit) is decimal converted)
        {
            return (double)converted;
        }

        diagnostics.Add(ScenarioDiagnostics.WrongUnit(place, source.Name, value, source.Unit));
        return null;
    }

    /// <summary>The value as the input's integer: exact, in its range.</summary>
    public long? Integer(Variable input, Measure value, SourceSpan place)
    {
        Metadata.SignalMetadata? signal = loop.Site.Signal(input.Name);
        string unit = signal?.Unit ?? "";
        decimal resolution = signal?.Resolution ?? 1;
        if (Converted(value, unit) is not decimal converted)
        {
            diagnostics.Add(ScenarioDiagnostics.WrongUnit(place, input.Name, value, unit));
            return null;
        }

        decimal steps = converted / resolution;
        if (steps != decimal.Truncate(steps))
        {
            diagnostics.Add(ScenarioDiagnostics.OffResolution(place, input.Name, value, new Measure(resolution, unit)));
            return null;
        }

        if (steps < input.Range.Minimum || steps > input.Range.Maximum)
        {
            Measure minimum = new(input.Range.Minimum * resolution, unit);
            Measure maximum = new(input.Range.Maximum * resolution, unit);
            diagnostics.Add(ScenarioDiagnostics.OutsideRange(place, input.Name, value, minimum, maximum));
            return null;
        }

        return (long)steps;
    }

    private decimal? Converted(Measure value, string unit) =>
        value.Unit == unit ? value.Value : loop.Site.Convert(value.Value, value.Unit, unit);

    private int? Place<T>(IReadOnlyList<T> candidates, Func<T, string> nameOf, string what, string name, SourceSpan place)
    {
        for (int index = 0; index < candidates.Count; index++)
        {
            if (nameOf(candidates[index]) == name)
            {
                return index;
            }
        }

        diagnostics.Add(ScenarioDiagnostics.UnknownName(place, what, name, candidates.Select(nameOf)));
        return null;
    }

    private T? Found<T>(T? candidate, SourceSpan place, string what, string name, IEnumerable<string> known)
        where T : class
    {
        if (candidate is null)
        {
            diagnostics.Add(ScenarioDiagnostics.UnknownName(place, what, name, known));
        }

        return candidate;
    }
}
