using Sequencer.Language.Programs;

namespace Sequencer.Language.Rules.Protections;

/// <summary>A trip or interlock that waits longer than a requirement with the same cause allows for the answer.</summary>
internal sealed class DelayBeyondReactionRule : IProgramRule
{
    public void Check(UnitProgram program, RuleContext context)
    {
        foreach ((string name, Condition condition) in program.Trips.Select(trip => (trip.Name, trip.Condition))
            .Concat(program.Interlocks.Select(interlock => (interlock.Name, interlock.Condition))))
        {
            if ((condition is LingersFact lingers ? lingers.Condition : condition) is not StaysFact stays)
            {
                continue;
            }

            foreach (RequirementClause requirement in program.Requirements)
            {
                if (requirement.Fact is RequiredResponse response
                    && response.Trigger.Span.Text.SequenceEqual(stays.Condition.Span.Text)
                    && (response.Scans ?? response.Within.Scans(context.ScanMilliseconds)) < stays.Time.Scans(context.ScanMilliseconds))
                {
                    context.Report(ProtectionDiagnostics.DelayBeyondReaction(
                        stays.Span, name, Wording.Time(stays.Time), requirement.Name, Within(response)));
                }
            }
        }
    }

    private static string Within(RequiredResponse response) =>
        response.Scans is long scans ? FormattableString.Invariant($"{scans} scans") : Wording.Time(response.Within);
}
