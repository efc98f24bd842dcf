using Sequencer.Language.Programs;
using Sequencer.Language.Rules.Analysis;

namespace Sequencer.Language.Rules.Protections;

/// <summary>An alarm that compares a reading, with neither a deadband nor a delay.</summary>
internal sealed class AlarmWithoutDeadbandRule : IProgramRule
{
    public void Check(UnitProgram program, RuleContext context)
    {
        foreach (OperatorAlarm alarm in program.Alarms)
        {
            ReadingThreshold? bare = ConditionTree.Facts(alarm.Condition).Where(signed => !signed.Timed)
                .Select(signed => ReadingThreshold.Of(signed.Fact)).FirstOrDefault(threshold => threshold is not null);
            if (bare is { } threshold)
            {
                context.Report(ProtectionDiagnostics.AlarmWithoutDeadband(alarm, threshold.Input.Tag));
            }
        }
    }
}
