using Sequencer.Language.Programs;
using Sequencer.Language.Rules.Analysis;

namespace Sequencer.Language.Rules.StepFlow;

/// <summary>One output driven on and off, or driven and dosed with, or dosed with twice, by actions that can act at once: in one step, or in two that can be active together, unless their <c>while</c> conditions exclude each other.</summary>
internal sealed class ConflictingDrivesRule : IProgramRule
{
    public void Check(UnitProgram program, RuleContext context)
    {
        ProgramFacts facts = context.Facts(program);
        ILookup<string, (int Step, StepAction Action)> byOutput = Enumerable.Range(0, program.Steps.Length)
            .SelectMany(step => program.Steps[step].Actions.Select(action => (Step: step, Action: action)))
            .ToLookup(drive => OutputUse.DrivenBy(drive.Action)?.Tag ?? "", StringComparer.Ordinal);
        foreach (Output output in program.Outputs.Concat(program.DrivenElsewhere))
        {
            List<(int Step, StepAction Action)> drives = [.. byOutput[output.Tag]];
            for (int second = 1; second < drives.Count; second++)
            {
                for (int first = 0; first < second; first++)
                {
                    Compare(drives[first], drives[second], facts, context);
                }
            }
        }
    }

    private static void Compare((int Step, StepAction Action) first, (int Step, StepAction Action) second, ProgramFacts facts, RuleContext context)
    {
        if (Differ(first.Action, second.Action) && facts.Situations.Pairs.CanBeTogether(first.Step, second.Step) && !Exclude(first.Action, second.Action))
        {
            context.Report(ProcedureDiagnostics.ConflictingDrives(
                second.Action,
                first.Action,
                OutputUse.DrivenBy(second.Action)?.Tag ?? "",
                facts.Graph.Steps[second.Step].Number,
                facts.Graph.Steps[first.Step].Number));
        }
    }

    private static bool Differ(StepAction first, StepAction second) =>
        OutputUse.Doses(first) || OutputUse.Doses(second) || OutputUse.SwitchesOn(first) != OutputUse.SwitchesOn(second);

    private static bool Exclude(StepAction first, StepAction second) =>
        first is DriveAction { While: { } one } && second is DriveAction { While: { } other }
        && !ConditionTruth.CanAllBe([(one, true), (other, true)]);
}
