using Sequencer.Language.Programs;
using Sequencer.Language.Rules.Analysis;

namespace Sequencer.Language.Rules.Protections;

/// <summary>An interlock <c>while</c> or <c>unless</c> that blocks at one value of a reading, where something demands or rests the output on at that value. A step whose way on (or <c>until</c>, or dose target) on the same reading comes first does not count.</summary>
internal sealed class ThresholdWithoutBandRule : IProgramRule
{
    public void Check(UnitProgram program, RuleContext context)
    {
        foreach (Interlock interlock in program.Interlocks.Where(interlock => interlock.Form != InterlockForm.FromUntil && !ConditionTruth.IsConstant(interlock.Condition)))
        {
            foreach (SignedFact signed in ConditionTree.Facts(interlock.Condition, interlock.Form == InterlockForm.While))
            {
                if (!signed.Timed && ReadingThreshold.Of(signed.Fact) is { } threshold
                    && interlock.Outputs.Any(output => IsOnAt(signed.Positive ? threshold : threshold.Opposite(), output, program)))
                {
                    context.Report(ProtectionDiagnostics.ThresholdWithoutBand(interlock, signed.Fact, threshold.Input.Tag));
                }
            }
        }
    }

    private static bool IsOnAt(ReadingThreshold block, Output output, UnitProgram program)
    {
        foreach (Step step in program.Steps)
        {
            foreach (StepAction action in step.Actions.Where(OutputUse.SwitchesOn))
            {
                if (OutputUse.DrivenBy(action)?.Tag == output.Tag && !Ends(action, block) && !IsLeft(step, block, program))
                {
                    return true;
                }
            }
        }

        return OutputUse.RestValues(output).Any(OutputUse.CanBeOn);
    }

    private static bool Ends(StepAction action, ReadingThreshold block) => action switch
    {
        DriveAction { Until: { } until } => Passes(until, block),
        DoseAction { Output.Delivery.Reagent.Effect: { } effect } dose => dose.Signal.Tag == block.Input.Tag
            && LinearForm.Of(dose.Target).Bounds() is var (low, high)
            && new ReadingThreshold(dose.Signal, effect == ReagentEffect.Raises, low, high).ComesBefore(block),
        _ => false,
    };

    private static bool IsLeft(Step step, ReadingThreshold block, UnitProgram program) =>
        program.Transitions.Any(way => way.From is [var only] && only == step.Number && Passes(way.When, block));

    private static bool Passes(Condition condition, ReadingThreshold block) => condition is AnyOf any
        ? any.Conditions.Any(part => ReadingThreshold.Of(part)?.ComesBefore(block) == true)
        : ReadingThreshold.Of(condition)?.ComesBefore(block) == true;
}
