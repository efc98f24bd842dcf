using Sequencer.Sites.Folders;
using Sequencer.Sites.Tests.Recipes;
using Sequencer.Sites.Trials;
using Sequencer.Text;

namespace Sequencer.Sites.Tests.Trials;

/// <summary>A small site with trials.</summary>
internal static class TrialSite
{
    public const string Files = """
        # trials.yaml
        trials: 1
        scenarios: [normal batch]
        tolerances:
          - {quantity: reagents.CAUSTIC.dissolved.sodium, within: 5 %}
          - {quantity: lines.caustic.rate, within: 1 L/h}
          - {quantity: transmitters.AT301.offset, low: -0.1 pH, high: 0.1 pH}
          - {quantity: supplies.lab_drains.pH, within: 0.2}
        # scenarios/normal.yaml
        scenario: 1
        name: normal batch
        lasts: 4 h
        until: {unit: TK301, state: Complete, after: 2 min}
        actions:
          - {at: 5 s, press: TK301.start}
        expect:
          - {unit: TK301, ends: Complete}
        """;

    public static LoadedSite Load(SiteWithFiles site)
    {
        DiagnosticBag diagnostics = new();
        return SiteLoader.Load(new SiteFolder(site.Folder), diagnostics) ?? throw new InvalidOperationException(DiagnosticRenderer.Render(diagnostics.InOrder()));
    }

    public static SiteTrials TrialsOf(LoadedSite site) => site.Trials ?? throw new InvalidOperationException("the site has no trials");
}
