using Sequencer.Sites.Tests.Recipes;
using Sequencer.Text;

namespace Sequencer.Sites.Tests.Trials;

/// <summary>A mistake in trials.yaml is reported at the word that is wrong.</summary>
public sealed class TrialReaderTests
{
    [Theory]
    [InlineData("SEQ0630", "scenarios: [normal batch]", "scenarios: [normal bath]", "normal bath", "did you mean `normal batch`?")]
    [InlineData("SEQ0632", "offset, low: -0.1 pH, high: 0.1 pH", "offset, within: 0.1 pH", "transmitters.AT301.offset", "write `low` and `high`")]
    [InlineData("SEQ0633", "tolerances:", "operator: [{prompt: TK301.Q1, answer: a, late: 60 %, late_by: 1 h, never: 60 %}]\ntolerances:", "TK301.Q1", "100 % or less")]
    [InlineData("SEQ0610", "tolerances:", "operator: [{prompt: TK301.Q1, answer: a}]\ntolerances:", "TK301.Q1", null)]
    [InlineData("SEQ0610", "tolerances:", "outcomes: [{value: TK301.depth}]\ntolerances:", "TK301.depth", null)]
    [InlineData("SEQ0610", "tolerances:", "left_out: [{fault: AT301.frozne, reason: none}]\ntolerances:", "AT301.frozne", null)]
    [InlineData("SEQ0286", "tolerances:", "recipes: [narrow]\ntolerances:", "narrow", null)]
    [InlineData("SEQ0834", "low: -0.1 pH, high: 0.1 pH", "low: 0.1 pH, high: -0.1 pH", "0.1 pH", "correct one of the two values")]
    [InlineData("SEQ0810", "within: 1 L/h", "within: 1 L", "1 L", "L/h")]
    [InlineData("SEQ0807", "within: 5 %", "within: five", "five", null)]
    [InlineData("SEQ0808", "within: 5 %", "within: 0 %", "0 %", null)]
    [InlineData("SEQ0808", "low: -0.1 pH, high: 0.1 pH", "low: -1e15 pH, high: 0.1 pH", "-1e15 pH", null)]
    [InlineData("SEQ0831", "reagents.CAUSTIC.dissolved.sodium, within: 5 %", "reagents.CAUSTC.dissolved.sodium, low: 2 mol/L, high: 3 mol/L", "reagents.CAUSTC.dissolved.sodium", "did you mean `reagents.CAUSTIC`?")]
    [InlineData("SEQ0805", "lines.caustic.rate, within: 1 L/h", "lines.caustic.rat, low: 10 L/h, high: 12 L/h", "lines.caustic.rat", "did you mean `rate`?")]
    [InlineData("SEQ0804", "lines.caustic.rate, within: 1 L/h", "reagents.CAUSTIC.dissolved.sodium, within: 3 %", "reagents.CAUSTIC.dissolved.sodium", "remove one of them")]
    [InlineData("SEQ0805", "trials: 1", "trials: 1\nrunning: 5", "running", null)]
    [InlineData("SEQ0808", "trials: 1", "trials: 2", "2", null)]
    [InlineData("SEQ0631", "actions:\n  - {at: 5 s, press: TK301.start}", "inputs:\n  - {at: 5 s, TK301.start: 1}", "normal batch", "without `inputs`")]
    public void A_mistake_has_its_place(string code, string old, string with, string marked, string? mend)
    {
        Assert.Contains(old, TrialSite.Files, StringComparison.Ordinal);
        using SiteWithFiles site = new SiteWithFiles("one-pit").With(TrialSite.Files.Replace(old, with, StringComparison.Ordinal));
        Diagnostic found = SiteCommands.Check(site.Folder).Diagnostics.First(diagnostic => diagnostic.Severity == Severity.Error);
        Assert.Equal((code, marked), (found.Code, found.Span.Text.ToString()));
        Assert.EndsWith("trials.yaml", found.Span.Source.Path, StringComparison.Ordinal);
        Assert.Contains(mend ?? "", found.Mend, StringComparison.Ordinal);
    }
}
