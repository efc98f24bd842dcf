using Sequencer.Language.Programs;
using Sequencer.Language.Rules.Analysis;

namespace Sequencer.Language.Rules.StepFlow;

/// <summary>A dose toward a reading that is usable only with an output on, where neither the step, nor one beside it, nor a value at rest switches that output on.</summary>
internal sealed class ReadingOfIdleLoopRule : IProgramRule
{
    public void Check(UnitProgram program, RuleContext context)
    {
        ProgramFacts facts = context.Facts(program);
        for (int place = 0; place < facts.Graph.Steps.Length; place++)
        {
            Step step = facts.Graph.Steps[place];
            foreach (DoseAction dose in step.Actions.OfType<DoseAction>())
            {
                if (Needed(dose.Signal) is { } pump && !OutputUse.RestValues(pump).Any(OutputUse.CanBeOn) && !IsOn(pump, place, facts))
                {
                    context.Report(CourseDiagnostics.ReadingOfIdleLoop(dose, step, pump));
                }
            }
        }
    }

    /// <summary>An output without which the reading is never usable.</summary>
    private static Output? Needed(AnalogueInput reading) => reading.UsableWhile is not { } usable ? null : ConditionTree.Facts(usable)
        .Where(signed => signed.Positive && signed.Fact is OutputFact { Kind: OutputFactKind.On or OutputFactKind.Proved } && !ConditionTruth.CanAllBe([(usable, true), (signed.Fact, false)]))
        .Select(signed => ((OutputFact)signed.Fact).Output).FirstOrDefault();

    private static bool IsOn(Output output, int place, ProgramFacts facts) => Enumerable.Range(0, facts.Graph.Steps.Length)
        .Where(other => facts.Situations.Pairs.CanBeTogether(place, other))
        .SelectMany(other => facts.Graph.Steps[other].Actions)
        .Any(action => OutputUse.SwitchesOn(action) && OutputUse.DrivenBy(action)?.Tag == output.Tag);
}
