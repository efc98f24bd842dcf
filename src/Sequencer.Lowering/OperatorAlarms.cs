using Sequencer.Control.TransitionSystems;
using Sequencer.Language.Programs;
using Sequencer.Text;

namespace Sequencer.Lowering;

/// <summary>
/// Alarms that an author wrote. One with a response has a state of IEC 62682: an acknowledgement counts
/// for what was shown in the scan before, so an event is never acknowledged unseen.
/// </summary>
internal static class OperatorAlarms
{
    public static void Lower(UnitScan scan)
    {
        foreach (OperatorAlarm alarm in scan.Unit.Alarms)
        {
            Truth condition = ConditionLowering.Lower(scan, alarm.Condition, new ConditionPlace(scan.Own(alarm.Name)));
            scan.System.Alarm(scan.Own(alarm.Name), alarm.InWords(), condition.Possibly, new Origin(alarm.Span));
            if (alarm.Response is not null)
            {
                State(scan, alarm, condition.Possibly);
            }
        }
    }

    private static void State(UnitScan scan, OperatorAlarm alarm, Expression raised)
    {
        ExpressionBuilder build = scan.Build;
        Origin origin = new(alarm.Span);
        long last = (long)AlarmState.ReturnedUnacknowledged;
        DeclaredState state = scan.System.State(scan.Own($"{alarm.Name}.state"), new IntegerRange(0, last), 0, retained: true, StatePurpose.Control, origin);
        Expression Value(AlarmState value) => build.Constant((long)value);
        Expression Was(AlarmState value) => build.Equal(state.Current, Value(value));
        Expression acknowledged = scan.Commands.Acknowledge;
        Expression whileRaised = build.IfThenElse(
            build.Or(Was(AlarmState.Acknowledged), build.And(Was(AlarmState.Unacknowledged), acknowledged)),
            Value(AlarmState.Acknowledged),
            Value(AlarmState.Unacknowledged));
        Expression open = build.And(
            build.Or(Was(AlarmState.Unacknowledged), Was(AlarmState.ReturnedUnacknowledged)), build.Not(acknowledged));
        Expression afterwards = build.IfThenElse(open, Value(AlarmState.ReturnedUnacknowledged), Value(AlarmState.Normal));
        state.Next = scan.System.Define(scan.Own($"{alarm.Name}.state.now"), build.IfThenElse(raised, whileRaised, afterwards), origin);
    }
}
