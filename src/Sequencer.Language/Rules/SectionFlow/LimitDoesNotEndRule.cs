using Sequencer.Language.Programs;

namespace Sequencer.Language.Rules.SectionFlow;

/// <summary>A step of a section whose limit asks for a reaction that the state does not listen to.</summary>
internal sealed class LimitDoesNotEndRule : IProgramRule
{
    public void Check(UnitProgram program, RuleContext context)
    {
        foreach (Step step in program.Steps.Where(step => !step.IsOfBatch && step.Limit.GoTo is null))
        {
            Reaction weakest = Weakest(step.State);
            if (step.Limit.Reaction < weakest)
            {
                context.Report(SectionDiagnostics.LimitDoesNotEnd(step, Allowed(weakest)));
            }
        }
    }

    /// <summary>The weakest reaction that leads out of the state; beyond abort there is none but the emergency, which is for trips.</summary>
    private static Reaction Weakest(ProceduralState state) => state switch
    {
        ProceduralState.Restarting => Reaction.Hold,
        ProceduralState.Holding => Reaction.Stop,
        ProceduralState.Stopping => Reaction.Abort,
        _ => Reaction.Emergency + 1,
    };

    private static string Allowed(Reaction weakest) => weakest switch
    {
        Reaction.Hold => "or `then hold`, `then stop` or `then abort`",
        Reaction.Stop => "or `then stop` or `then abort`",
        Reaction.Abort => "or `then abort`",
        _ => "or shorten the section",
    };
}
