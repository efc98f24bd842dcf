using Sequencer.Control.TransitionSystems;
using Sequencer.Language.Programs;
using Sequencer.Text;

namespace Sequencer.Lowering;

/// <summary>
/// Checked programs of a site to its transition system: the only place where words get a meaning. Takes
/// programs without errors; the order inside a scan is that of <c>spec/meaning.md</c>.
/// </summary>
public static class SiteLowering
{
    public static TransitionSystem Lower(SiteProgram site)
    {
        SystemBuilder system = new(site.ScanMilliseconds);
        foreach (UnitProgram unit in site.Units)
        {
            Lower(new UnitScan(system, unit));
        }

        return system.Build(site.Name);
    }

    private static void Lower(UnitScan scan)
    {
        scan.Doses.Measure();
        scan.State.Resolve();
        scan.Situation.Evolve();
        scan.Doses.Pulse();
        scan.Finals.Finish();
        scan.Memory.Finish();
        scan.Settings.Finish();
        scan.Latches.Finish();
        scan.Situation.Finish();
        scan.State.Finish();
        foreach (OperatorAlarm alarm in scan.Unit.Alarms)
        {
            Truth condition = ConditionLowering.Lower(scan, alarm.Condition, new ConditionPlace(alarm.Name));
            scan.System.Alarm(alarm.Name, alarm.Message, condition.Possibly, new Origin(alarm.Span));
        }

        Requirements.Lower(scan);
    }
}
