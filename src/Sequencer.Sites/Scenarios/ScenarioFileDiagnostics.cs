using Sequencer.Text;

namespace Sequencer.Sites.Scenarios;

/// <summary>What can be wrong in a scenario file beyond its YAML: SEQ0620 to SEQ0623.</summary>
internal static class ScenarioFileDiagnostics
{
    public static Diagnostic NeedsExactlyOne(SourceSpan span, string what, IEnumerable<string> keys, int found) => new(
        "SEQ0620",
        Severity.Error,
        span,
        found == 0 ? $"{what} says nothing of what it is" : $"{what} says {found} things at once",
        "each entry of a script means one thing, so that a report can say of each what came of it",
        $"write exactly one of {string.Join(", ", keys.Select(key => $"`{key}`"))}");

    public static Diagnostic NotAMeasure(SourceSpan span, string written) => new(
        "SEQ0621",
        Severity.Error,
        span,
        $"`{written}` is not a number with a unit",
        "a value that is not read as meant would test something else than its author thinks",
        "write a decimal number, a space and the unit, as `4.500 m3`; a count has no unit");

    public static Diagnostic NothingExpected(SourceSpan span, string name) => new(
        "SEQ0622",
        Severity.Warning,
        span,
        $"the scenario `{name}` expects nothing",
        "a run that nothing is expected of cannot fail, so it tests nothing",
        "add `expect:` with at least the state the units end in");

    public static Diagnostic BoundsMissing(SourceSpan span, string name) => new(
        "SEQ0623",
        Severity.Error,
        span,
        $"the expectation on `{name}` has no bound",
        "every value would pass",
        "add `at_least`, `at_most` or both");
}
