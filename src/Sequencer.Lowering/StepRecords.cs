using Sequencer.Control.TransitionSystems;
using Sequencer.Language.Programs;
using Sequencer.Text;

namespace Sequencer.Lowering;

/// <summary>
/// What steps keep for the batch report: while a step is active the last usable value, which then stays until
/// the next start, whatever ends the batch.
/// </summary>
internal static class StepRecords
{
    public static void Lower(UnitScan scan)
    {
        foreach (Step step in scan.Unit.Steps)
        {
            foreach ((RecordAction record, int number) in RecordAction.Of(step))
            {
                Lower(scan, step, record, scan.StepNamed(step.Number, FormattableString.Invariant($"record{number}")));
            }
        }
    }

    private static void Lower(UnitScan scan, Step step, RecordAction record, string name)
    {
        ExpressionBuilder build = scan.Build;
        Origin origin = new(record.Span);
        ConditionPlace place = new(name);
        Expression value = QuantityLowering.Steps(scan, place, record.Value);
        DeclaredState kept = scan.System.State(name, value.Range, Math.Clamp(0, value.Range.Minimum, value.Range.Maximum), retained: true, StatePurpose.Control, origin);
        DeclaredState taken = scan.System.State($"{name}.taken", false, retained: true, StatePurpose.Control, origin);
        Expression takes = build.And(scan.StepNow(step.Number), QuantityLowering.Usable(scan, place, record.Value), build.Not(scan.State.Started));
        kept.Next = build.IfThenElse(takes, value, kept.Current);
        taken.Next = build.Or(takes, build.And(taken.Current, build.Not(scan.State.Started)));
        scan.System.Define($"{name}.value", kept.Current, origin);
        scan.System.Define($"{name}.known", taken.Current, origin);
    }
}
