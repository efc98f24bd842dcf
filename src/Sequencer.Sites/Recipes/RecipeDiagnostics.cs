using Sequencer.Language.Units;
using Sequencer.Simulation.Scenarios;
using Sequencer.Text;

namespace Sequencer.Sites.Recipes;

/// <summary>What can be wrong where a recipe meets the programs: SEQ0280 to SEQ0286.</summary>
internal static class RecipeDiagnostics
{
    public static Diagnostic UnknownUnit(SourceSpan span, string unit, string? near, IEnumerable<string> known) => Error(
        "SEQ0280",
        span,
        $"the site has no unit `{unit}`",
        "the values below it would never reach a batch",
        near is null ? $"name one of {List(known)}" : $"did you mean `{near}`?");

    public static Diagnostic UnknownParameter(SourceSpan span, string unit, string parameter, string? near, string[] known) => Error(
        "SEQ0281",
        span,
        $"`{unit}` has no parameter `{parameter}`",
        "whoever chose the value would believe that the batch follows it",
        near is not null ? $"did you mean `{near}`?" : known.Length == 0 ? $"take it out: `{unit}` has no parameter at all" : $"name one of {List(known)}");

    public static Diagnostic WrongUnit(SourceSpan span, string parameter, Measure value, Unit unit) => Error(
        "SEQ0282",
        span,
        $"`{value}` cannot be a value of `{parameter}`, which is in `{unit.Symbol}`",
        "a recipe in the wrong unit gives a batch a thousand times too much of something",
        $"write the value in {List(UnitTable.Of(unit.Dimension).Select(one => one.Symbol))}");

    public static Diagnostic OutOfRange(SourceSpan span, string parameter, Measure value, Measure minimum, Measure maximum, SourceSpan declared) => Error(
        "SEQ0283",
        span,
        $"`{value}` is outside the range of `{parameter}`, `{minimum}` to `{maximum}`",
        "the proofs are about the declared range only, and the controller refuses the start with such a value",
        $"write a value from `{minimum}` to `{maximum}`, or widen the range in the program and prove it again") with
    {
        Notes = [new RelatedNote(declared, "the range is declared here")],
    };

    public static Diagnostic OffResolution(SourceSpan span, string parameter, Measure value, Measure step) => Error(
        "SEQ0284",
        span,
        $"`{value}` lies between two steps of `{parameter}`, which moves in steps of `{step}`",
        "the controller holds whole steps only, so the batch would run with another value than the recipe's",
        $"round the value to a whole number of `{step}`");

    public static Diagnostic TwoRecipesOfOneName(SourceSpan span, string name, SourceSpan first) => Error(
        "SEQ0285",
        span,
        $"two recipes are named `{name}`",
        "it would be open which of them a batch was run with",
        "give one of them another name; capitals, blanks and signs do not tell names apart") with
    {
        Notes = [new RelatedNote(first, "the first one")],
    };

    public static Diagnostic UnknownRecipe(SourceSpan span, string name, string? near, string[] known) => Error(
        "SEQ0286",
        span,
        $"the site has no recipe `{name}`",
        "the scenario would be played with other values than its author meant",
        near is not null ? $"did you mean `{near}`?" : known.Length == 0 ? "put the recipe into the folder `recipes`" : $"name one of {List(known)}");

    private static string List(IEnumerable<string> names) => string.Join(", ", names.Select(name => $"`{name}`"));

    private static Diagnostic Error(string code, SourceSpan span, string message, string reason, string mend) =>
        new(code, Severity.Error, span, message, reason, mend);
}
