using Sequencer.Text;

namespace Sequencer.Simulation.Scenarios;

/// <summary>What can be wrong where a scenario meets the site.</summary>
internal static class ScenarioDiagnostics
{
    private const int NamesShown = 12;

    public static Diagnostic UnknownName(SourceSpan place, string what, string name, IEnumerable<string> known) => new(
        "SEQ0610",
        Severity.Error,
        place,
        $"the site has no {what} named `{name}`",
        "an action or expectation on something that does not exist would silently do nothing",
        Known(what, known));

    public static Diagnostic WrongUnit(SourceSpan place, string name, Measure value, string unit) => new(
        "SEQ0611",
        Severity.Error,
        place,
        $"`{value}` cannot be a value of `{name}`, which is {(unit.Length == 0 ? "a number without a unit" : $"in {unit}")}",
        "a value in the wrong unit is how a plant gets a thousand times too much of something",
        unit.Length == 0 ? "write the number alone" : $"write the value in {unit}, or in a unit that converts to it");

    public static Diagnostic OffResolution(SourceSpan place, string name, Measure value, Measure step) => new(
        "SEQ0612",
        Severity.Error,
        place,
        $"`{value}` lies between two steps of `{name}`, which moves in steps of `{step}`",
        "the controller holds whole steps only, so the value it used would not be the one written here",
        $"round the value to a whole number of `{step}`");

    public static Diagnostic OutsideRange(SourceSpan place, string name, Measure value, Measure minimum, Measure maximum) => new(
        "SEQ0613",
        Severity.Error,
        place,
        $"`{value}` is outside the range of `{name}`, `{minimum}` to `{maximum}`",
        "the program's input can never have that value",
        $"write a value from `{minimum}` to `{maximum}`");

    public static Diagnostic NotTheOperators(SourceSpan place, string name) => new(
        "SEQ0614",
        Severity.Error,
        place,
        $"`{name}` is read from the plant and cannot be set by the operator",
        "the next scan would overwrite the value, and the scenario would test nothing",
        $"change the plant instead: inject a fault of the instrument behind `{name}`");

    private static string Known(string what, IEnumerable<string> known)
    {
        string[] names = [.. known.Order(StringComparer.Ordinal)];
        if (names.Length == 0)
        {
            return $"the site has no {what} at all; take this entry out";
        }

        string more = names.Length > NamesShown ? $" and {names.Length - NamesShown} more" : "";
        return $"name one of {string.Join(", ", names.Take(NamesShown).Select(name => $"`{name}`"))}{more}";
    }
}
