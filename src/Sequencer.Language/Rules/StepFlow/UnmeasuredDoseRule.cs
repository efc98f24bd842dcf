using Sequencer.Language.Programs;
using Sequencer.Language.Rules.Analysis;

namespace Sequencer.Language.Rules.StepFlow;

/// <summary>
/// A chemical that a step runs or opens without a time of its own: without a pause toward the reading that it
/// moves, or with nothing in the step or in an interlock that looks at its total. Beside a dose on the same output the
/// conflict has a message of its own.
/// </summary>
internal sealed class UnmeasuredDoseRule : IProgramRule
{
    public void Check(UnitProgram program, RuleContext context)
    {
        foreach (Step step in program.Steps)
        {
            foreach (DriveAction drive in step.Actions.OfType<DriveAction>())
            {
                if (drive is { On: true, For: null } && OutputUse.DosesChemical(drive.Output, program.Reagents)
                    && !step.Actions.Any(action => OutputUse.Doses(action) && OutputUse.DrivenBy(action)?.Tag == drive.Output.Tag))
                {
                    Check(drive, step, program, context);
                }
            }
        }
    }

    private static void Check(DriveAction drive, Step step, UnitProgram program, RuleContext context)
    {
        List<Condition> ends = [.. new[] { drive.While, drive.Until }.OfType<Condition>(), .. program.Transitions.Where(way => way.From.Contains(step.Number)).Select(way => way.When)];
        if (drive.Output.Delivery?.Reagent is { Signal: { } reading, Effect: not null } && ends.Exists(end => ConditionTree.InputTags(end).Contains(reading.Tag)))
        {
            context.Report(CourseDiagnostics.ContinuousDose(drive, reading, step));
        }
        else if (!ends.Concat(program.Interlocks.Where(interlock => interlock.Outputs.Any(blocked => blocked.Tag == drive.Output.Tag)).Select(interlock => interlock.Condition))
            .Any(end => ConditionTree.Amounts(end).OfType<TotalQuantity>().Any(total => total.Output.Tag == drive.Output.Tag)))
        {
            context.Report(CourseDiagnostics.DoseWithoutMaximum(drive, step));
        }
    }
}
