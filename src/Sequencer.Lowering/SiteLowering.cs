using Sequencer.Control.TransitionSystems;
using Sequencer.Language.Programs;
using Sequencer.Lowering.Obligations;
using Sequencer.Lowering.Supposing;

namespace Sequencer.Lowering;

/// <summary>
/// Checked programs of a site to its transition system: the only place where words get a meaning. Takes
/// programs without errors; the order inside a scan is that of <c>spec/meaning.md</c>.
/// </summary>
public static class SiteLowering
{
    public static TransitionSystem Lower(SiteProgram site) => Lower(site, Supposition.Nothing);

    /// <summary>The system that the site would be if what is supposed were so.</summary>
    public static TransitionSystem Lower(SiteProgram site, Supposition supposed) => Lowered(site, supposed).System.Build(site.Name);

    /// <summary>The system of the site, with what every unit owes without being asked.</summary>
    public static TransitionSystem LowerWithObligations(SiteProgram site)
    {
        SiteScan scan = Lowered(site, Supposition.Nothing);
        foreach (UnitScan unit in scan.Units)
        {
            StandardObligations.Add(unit);
        }

        return scan.System.Build(site.Name);
    }

    private static SiteScan Lowered(SiteProgram site, Supposition supposed)
    {
        SiteScan scan = new(site, supposed);
        foreach (UnitScan unit in scan.Units)
        {
            unit.LowerProtections();
        }

        foreach (UnitScan unit in scan.Units)
        {
            Lower(unit);
        }

        foreach (ClaimQueue queue in scan.Queues)
        {
            queue.Finish();
        }

        foreach (UnitScan unit in scan.Units)
        {
            unit.Reals.Assume();
            unit.Calibrations.Owed();
            if (supposed.RequirementsAskWhatHappens)
            {
                Happenings.Lower(unit);
            }
            else
            {
                Requirements.Lower(unit);
            }

            Goals.Add(unit);
        }

        return scan;
    }

    private static void Lower(UnitScan scan)
    {
        scan.Doses.Measure();
        scan.State.Resolve();
        scan.Situation.Evolve();
        scan.Prompts.Evolve();
        scan.Doses.Pulse();
        scan.Finals.Finish();
        scan.Analogues.Finish();
        scan.Memory.Finish();
        scan.Settings.Finish();
        scan.Latches.Finish();
        scan.Facts.Finish();
        scan.Counts.Finish();
        scan.Requests.Finish();
        StepRecords.Lower(scan);
        scan.Situation.Finish();
        scan.Claims.Finish();
        scan.State.Finish();
        scan.Watch.Finish();
        scan.Votes.Finish();
        scan.Pairs.Finish();
        OperatorAlarms.Lower(scan);
    }
}
