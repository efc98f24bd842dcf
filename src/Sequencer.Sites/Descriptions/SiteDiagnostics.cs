using Sequencer.Text;

namespace Sequencer.Sites.Descriptions;

/// <summary>Mistakes in a site's folder and in <c>site.yaml</c>, codes SEQ0901 to SEQ0919.</summary>
public static class SiteDiagnostics
{
    public static Diagnostic NoSuchFile(SourceSpan span, string file) => Error(
        "SEQ0901",
        span,
        $"there is no file `{file}` in the site's folder",
        "a site is checked as a whole: without this file nothing can be said about the plant",
        "correct the name or put the file there");

    public static Diagnostic OutsideTheFolder(SourceSpan span, string file) => Error(
        "SEQ0902",
        span,
        $"`{file}` leads out of the site's folder",
        "a site must be complete in its folder, so that what was reviewed is what is archived",
        "copy the file into the site's folder and name it without `..` and without a leading slash");

    public static Diagnostic NotAFile(SourceSpan span, string file) => Error(
        "SEQ0903",
        span,
        $"`{file}` is a folder where a file is expected",
        "nothing can be read from it",
        "name the file itself");

    public static Diagnostic Unreadable(SourceSpan span, string file, string reason) => Error(
        "SEQ0904",
        span,
        $"`{file}` cannot be read: {reason}",
        "a site is checked as a whole",
        "make the file readable and try again");

    public static Diagnostic UnknownRequirement(SourceSpan span, string hazard, string requirement) => Error(
        "SEQ0905",
        span,
        $"hazard `{hazard}` is said to be met by `{requirement}`, but no program has a requirement of that name",
        "a hazard that points at nothing looks covered and is not",
        "name a `require` of the programs, or say `open:` and why");

    public static Diagnostic HazardNeitherMetNorOpen(SourceSpan span, string hazard) => Error(
        "SEQ0906",
        span,
        $"hazard `{hazard}` must be either met by requirements or open with a reason",
        "a list of hazards is worth something only if each has an answer",
        "write `met_by: [H1]` or `open: \"why\"`, one of the two");

    public static Diagnostic RequirementWithoutHazard(SourceSpan span, string requirement) => new(
        "SEQ0907",
        Severity.Warning,
        span,
        $"requirement `{requirement}` belongs to no hazard of the site",
        "a reviewer reads from hazard to requirement; one without a hazard is overlooked or has lost its reason",
        "add it to the `met_by` of a hazard in `site.yaml`");

    public static Diagnostic TwoUnitsOfOneName(SourceSpan span, string unit) => Error(
        "SEQ0908",
        span,
        $"another program of the site has a unit `{unit}` too",
        "states, commands and records are told apart by the unit's name",
        "give each unit its own name");

    public static Diagnostic ConsentWithoutBounds(SourceSpan span, string quantity) => Error(
        "SEQ0909",
        span,
        $"the consent limit of `{quantity}` has neither a low nor a high bound",
        "a limit without a bound can never be broken",
        "write `low:`, `high:` or both");

    public static Diagnostic HazardNamedTwice(SourceSpan span, string hazard) => Error(
        "SEQ0910",
        span,
        $"two hazards have the name `{hazard}`",
        "documents refer to hazards by their names",
        "give each hazard its own name");

    public static Diagnostic TwoScenariosOfOneName(SourceSpan span, string scenario) => Error(
        "SEQ0912",
        span,
        $"another scenario of the site is named like `{scenario}`",
        "reports and result folders are told apart by the scenario's name, in small letters and digits only",
        "give each scenario its own name");

    public static Diagnostic ConsentOfUnknownQuantity(SourceSpan span, string quantity, string? near) => Error(
        "SEQ0914",
        span,
        $"the consent limit of `{quantity}` names nothing that the plant keeps of a whole run",
        "a reading may be wrong and a value at the end may have been another before: neither tells whether the limit was kept",
        near is null
            ? "name a total of the plant, as `LINE.pH_lowest`; `keeps_highest` of a line in `plant.yaml` makes others"
            : $"did you mean `{near}`? Totals of the plant may stand here; `keeps_highest` of a line in `plant.yaml` makes more");

    private static Diagnostic Error(string code, SourceSpan span, string message, string reason, string mend) =>
        new(code, Severity.Error, span, message, reason, mend);
}
