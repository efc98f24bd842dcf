using Sequencer.Language.Programs;
using Sequencer.Language.Rules.Analysis;
using Sequencer.Language.Units;

namespace Sequencer.Language.Rules.Protections;

/// <summary>An interlock that blocks above a limit of a reading which, at the fastest rise assumed, passes the end of its range while the device still moves.</summary>
internal sealed class BlockTooLateRule : IProgramRule
{
    public void Check(UnitProgram program, RuleContext context)
    {
        foreach (AssumedRate rate in program.Assumptions.Select(assumption => assumption.Fact).OfType<AssumedRate>().Where(rate => rate.Rises))
        {
            foreach (Interlock interlock in program.Interlocks.Where(interlock => interlock.Form != InterlockForm.Unless))
            {
                foreach (SignedFact signed in ConditionTree.Facts(interlock.Condition).Where(signed => signed.Positive))
                {
                    if (ReadingThreshold.Of(signed.Fact) is { Above: true } limit && limit.Input.Tag == rate.Input.Tag)
                    {
                        Check(signed.Fact, limit, rate, interlock, context);
                    }
                }
            }
        }
    }

    private static void Check(Condition fact, ReadingThreshold limit, AssumedRate rate, Interlock interlock, RuleContext context)
    {
        foreach (Output output in interlock.Outputs.Where(output => output.Confirmation is not null))
        {
            Rational rise = rate.PerSecond * output.Confirmation!.Within.Milliseconds / Rational.FromInt64(1000);
            if (limit.High + rise > rate.Input.Resolution * rate.Input.Maximum)
            {
                context.Report(EquipmentDiagnostics.BlockTooLate(fact, interlock, output, Wording.Amount(rise, rate.Input.Unit)));
                return;
            }
        }
    }
}
