using Sequencer.Language.Programs;
using Sequencer.Language.Rules.Analysis;
using Sequencer.Language.Units;

namespace Sequencer.Language.Rules.Protections;

/// <summary>A release less than 1 % of the reading's range away from the cause (common practice, no source).</summary>
internal sealed class ReleaseBandTooNarrowRule : IProgramRule
{
    private const int LeastPercent = 1;

    public void Check(UnitProgram program, RuleContext context)
    {
        foreach (Interlock interlock in program.Interlocks)
        {
            foreach ((Condition release, ReadingThreshold cause, ReadingThreshold end) in ReleaseBands.Of(interlock))
            {
                Rational width = ReleaseBands.Width(cause, end);
                Rational least = cause.Input.Resolution * (cause.Input.Maximum - cause.Input.Minimum) * new Rational(LeastPercent, 100);
                if (cause.Above != end.Above && width.Sign > 0 && width < least)
                {
                    context.Report(ProtectionDiagnostics.ReleaseBandTooNarrow(interlock, release, Wording.Amount(width, cause.Input.Unit), Wording.Amount(least, cause.Input.Unit)));
                }
            }
        }
    }
}
