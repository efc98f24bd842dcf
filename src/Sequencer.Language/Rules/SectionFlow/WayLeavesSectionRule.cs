using Sequencer.Language.Programs;

namespace Sequencer.Language.Rules.SectionFlow;

/// <summary>A way from a step of one section to a step of another.</summary>
internal sealed class WayLeavesSectionRule : IProgramRule
{
    public void Check(UnitProgram program, RuleContext context)
    {
        ILookup<int, Step> steps = program.Steps.ToLookup(step => step.Number);
        foreach (OrderedTransition way in TransitionOrder.Of(program))
        {
            Step[] all = [.. way.From.Concat(way.To).SelectMany(number => steps[number])];
            if (Array.Find(all, step => step.State != all[0].State) is { } stranger)
            {
                context.Report(SectionDiagnostics.WayLeavesSection(way.Span, all[0], stranger));
            }
        }
    }
}
