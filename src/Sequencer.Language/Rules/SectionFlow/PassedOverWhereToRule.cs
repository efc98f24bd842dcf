using Sequencer.Language.Programs;

namespace Sequencer.Language.Rules.SectionFlow;

/// <summary>A step with <c>only if</c> that has not exactly one <c>go</c> of its own, or stands in a join.</summary>
internal sealed class PassedOverWhereToRule : IProgramRule
{
    public void Check(UnitProgram program, RuleContext context)
    {
        foreach (Step step in program.Steps.Where(step => step.OnlyIf is not null))
        {
            Transition[] ways = [.. program.Transitions.Where(transition => transition.From.Contains(step.Number))];
            if (ways.Length != 1 || ways[0].From.Length > 1)
            {
                context.Report(SectionDiagnostics.PassedOverWhereTo(step, ways.Count(way => way.From.Length == 1)));
            }
        }
    }
}
