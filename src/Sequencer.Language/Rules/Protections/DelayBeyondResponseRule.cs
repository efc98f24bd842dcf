using Sequencer.Language.Programs;
using Sequencer.Language.Rules.Analysis;

namespace Sequencer.Language.Rules.Protections;

/// <summary>An alarm whose condition must last for as long as the operator has for his answer, or longer.</summary>
internal sealed class DelayBeyondResponseRule : IProgramRule
{
    public void Check(UnitProgram program, RuleContext context)
    {
        foreach (OperatorAlarm alarm in program.Alarms)
        {
            if (alarm.Response is { } response
                && ConditionTree.Parts(alarm.Condition).OfType<StaysFact>().FirstOrDefault(stays => stays.Time.Milliseconds >= response.Within.Milliseconds) is { } late)
            {
                context.Report(ProtectionDiagnostics.DelayBeyondResponse(alarm, Wording.Time(late.Time), Wording.Time(response.Within)));
            }
        }
    }
}
