using Sequencer.Language.Programs;
using Sequencer.Language.Rules.Analysis;

namespace Sequencer.Language.Rules.Protections;

/// <summary>A value at rest that depends on a reading and does not say <c>if bad</c>.</summary>
internal sealed class RestWithoutIfBadRule : IProgramRule
{
    public void Check(UnitProgram program, RuleContext context)
    {
        foreach (Output output in program.Outputs)
        {
            foreach (RestValue rest in OutputUse.RestValues(output))
            {
                if (rest.While is { } condition
                    && ConditionTree.Amounts(condition).OfType<ReadingQuantity>().FirstOrDefault() is { } reading
                    && !WrittenWords.Say(rest.Span, "if bad"))
                {
                    context.Report(SignalDiagnostics.RestWithoutIfBad(output, rest, reading.Input.Tag));
                }
            }
        }
    }
}
