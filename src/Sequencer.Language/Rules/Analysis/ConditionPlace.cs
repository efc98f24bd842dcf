using Sequencer.Language.Programs;

namespace Sequencer.Language.Rules.Analysis;

/// <summary>A condition of the program with its use.</summary>
internal readonly record struct ConditionPlace(Condition Condition, ConditionRole Role)
{
    public static IEnumerable<ConditionPlace> All(UnitProgram program) =>
    [
        .. Signals(program),
        .. Counts(program),
        .. Protections(program),
        .. Statements(program),
        .. Procedure(program),
    ];

    private static IEnumerable<ConditionPlace> Signals(UnitProgram program)
    {
        foreach (AnalogueInput input in program.AnalogueInputs)
        {
            if (input.UsableWhile is { } usable)
            {
                yield return new ConditionPlace(usable, ConditionRole.UsableWhile);
            }
        }

        foreach (Output output in program.Outputs)
        {
            foreach (RestValue rest in OutputUse.RestValues(output))
            {
                if (rest.While is { } condition)
                {
                    yield return new ConditionPlace(condition, ConditionRole.Rest);
                }
            }
        }

        foreach (PublishedFact fact in program.Facts)
        {
            yield return new ConditionPlace(fact.Condition, ConditionRole.Fact);
        }

        foreach (Latch latch in program.Latches)
        {
            yield return new ConditionPlace(latch.Set, ConditionRole.LatchSet);
            yield return new ConditionPlace(latch.Clear, ConditionRole.LatchClear);
        }
    }

    private static IEnumerable<ConditionPlace> Counts(UnitProgram program)
    {
        foreach (Count count in program.Counts)
        {
            yield return new ConditionPlace(count.Each, ConditionRole.CountEach);
            if (count.SetWhen is { } set)
            {
                yield return new ConditionPlace(set, ConditionRole.CountSet);
            }
        }
    }

    private static IEnumerable<ConditionPlace> Protections(UnitProgram program)
    {
        foreach (Interlock interlock in program.Interlocks)
        {
            yield return new ConditionPlace(interlock.Condition, ConditionRole.Interlock);
            if (interlock.Release is { } release)
            {
                yield return new ConditionPlace(release, ConditionRole.InterlockRelease);
            }
        }

        foreach (Permissive permissive in program.Permissives)
        {
            yield return new ConditionPlace(permissive.Condition, ConditionRole.Permissive);
        }

        foreach (Trip trip in program.Trips)
        {
            yield return new ConditionPlace(trip.Condition, ConditionRole.Trip);
        }

        foreach (OperatorAlarm alarm in program.Alarms)
        {
            yield return new ConditionPlace(alarm.Condition, ConditionRole.Alarm);
        }
    }

    private static IEnumerable<ConditionPlace> Statements(UnitProgram program)
    {
        foreach (AssumptionClause assumption in program.Assumptions)
        {
            if (assumption.Fact is AssumedNever never)
            {
                yield return new ConditionPlace(never.Condition, ConditionRole.Assumption);
            }
        }

        foreach (Condition condition in program.Requirements.SelectMany(requirement => Of(requirement.Fact)))
        {
            yield return new ConditionPlace(condition, ConditionRole.Requirement);
        }

        foreach (Condition condition in program.Reals.SelectMany(real => real.Rates).Select(rate => rate.While).OfType<Condition>())
        {
            yield return new ConditionPlace(condition, ConditionRole.Assumption);
        }

        foreach (StartCondition start in program.StartConditions)
        {
            yield return new ConditionPlace(start.Condition, ConditionRole.Start);
        }
    }

    /// <summary>The conditions that a requirement speaks of.</summary>
    public static IEnumerable<Condition> Of(RequiredFact fact) => fact switch
    {
        RequiredNever never => [never.Condition],
        RequiredAlways { While: { } condition } always => [always.Condition, condition],
        RequiredAlways always => [always.Condition],
        RequiredResponse { GoalCondition: { } goal } response => [response.Trigger, goal],
        RequiredResponse response => [response.Trigger],
        _ => [],
    };

    private static IEnumerable<ConditionPlace> Procedure(UnitProgram program)
    {
        foreach (Step step in program.Steps)
        {
            if (step.OnlyIf is { } condition)
            {
                yield return new ConditionPlace(condition, ConditionRole.StepOnlyIf);
            }
        }

        foreach (DriveAction drive in program.Steps.SelectMany(step => step.Actions).OfType<DriveAction>())
        {
            if (drive.AtEach is { } each)
            {
                yield return new ConditionPlace(each, ConditionRole.DriveWhile);
            }

            if (drive.While is { } condition)
            {
                yield return new ConditionPlace(condition, ConditionRole.DriveWhile);
            }

            if (drive.Until is { } until)
            {
                yield return new ConditionPlace(until, ConditionRole.DriveUntil);
            }
        }

        foreach (Transition transition in program.Transitions)
        {
            yield return new ConditionPlace(transition.When, ConditionRole.Transition);
        }
    }
}
