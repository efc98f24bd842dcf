using Sequencer.Text;

namespace Sequencer.Sites.Trials;

/// <summary>What can be wrong in a site's trials beyond its YAML: SEQ0630 to SEQ0633.</summary>
internal static class TrialDiagnostics
{
    public static Diagnostic UnknownScenario(SourceSpan span, string name, string? near, IReadOnlyCollection<string> known) => new(
        "SEQ0630",
        Severity.Error,
        span,
        $"the site has no scenario `{name}` to try",
        "a trial plays a scenario again and again; without it there is nothing to play",
        near is not null ? $"did you mean `{near}`?"
            : known.Count == 0 ? "write one in the site's folder `scenarios`"
            : $"name one of {string.Join(", ", known.Select(one => $"`{one}`"))}");

    public static Diagnostic WithoutPlant(SourceSpan span, string name) => new(
        "SEQ0631",
        Severity.Error,
        span,
        $"the scenario `{name}` is played without the plant",
        "faults and tolerances are the plant's: nothing would change from run to run",
        "name a scenario without `inputs`");

    public static Diagnostic NothingToBeWithin(SourceSpan span, string place) => new(
        "SEQ0632",
        Severity.Error,
        span,
        $"`plant.yaml` has no number at `{place}` to be within so much of",
        "a tolerance of nothing would leave every run as it is",
        "name a quantity that is written there, as `reagents.CAUSTIC.dissolved.sodium`, or write `low` and `high` in place of `within`");

    public static Diagnostic SharesBeyondAll(SourceSpan span, string prompt) => new(
        "SEQ0633",
        Severity.Error,
        span,
        $"`late`, `never` and `wrong` of `{prompt}` come to more than all runs",
        "a run has one operator, and he answers in one manner",
        "make the three shares come to 100 % or less");
}
