using Sequencer.Language.Programs;
using Sequencer.Language.Rules.Analysis;

namespace Sequencer.Language.Rules.Protections;

/// <summary>A release that holds at values of a reading at which the cause holds too, or next to them without a band.</summary>
internal sealed class ReleaseOverlapsCauseRule : IProgramRule
{
    public void Check(UnitProgram program, RuleContext context)
    {
        foreach (Interlock interlock in program.Interlocks)
        {
            foreach ((Condition release, ReadingThreshold cause, ReadingThreshold end) in ReleaseBands.Of(interlock))
            {
                if (ReleaseBands.Overlap(cause, end))
                {
                    context.Report(ProtectionDiagnostics.ReleaseOverlapsCause(interlock, release));
                }
            }
        }
    }
}
