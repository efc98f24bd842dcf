using Sequencer.Language.Programs;
using Sequencer.Language.Rules.Analysis;

namespace Sequencer.Language.Rules.Protections;

/// <summary>A bound or target with a parameter in it that, for some setting, lies outside the range of the reading it is held against; of a band, only where it lies outside as a whole.</summary>
internal sealed class ParameterBeyondInstrumentRule : IProgramRule
{
    public void Check(UnitProgram program, RuleContext context)
    {
        foreach (Condition fact in context.Facts(program).Conditions.SelectMany(place => ConditionTree.Parts(place.Condition)))
        {
            if (fact is CompareFact compare && compare.Left is ReadingQuantity left)
            {
                Check(left.Input, compare.Right, context);
            }
            else if (fact is CompareFact mirrored && mirrored.Right is ReadingQuantity right)
            {
                Check(right.Input, mirrored.Left, context);
            }
        }

        foreach (WithinFact within in context.Facts(program).Conditions.SelectMany(place => ConditionTree.Parts(place.Condition)).OfType<WithinFact>())
        {
            if (within.Value is ReadingQuantity reading)
            {
                Check(reading.Input, within.Lower, context, belowCounts: false);
                Check(reading.Input, within.Upper, context, aboveCounts: false);
            }
        }

        foreach (DoseAction dose in program.Steps.SelectMany(step => step.Actions).OfType<DoseAction>())
        {
            Check(dose.Signal, dose.Target, context);
        }
    }

    private static void Check(AnalogueInput input, Quantity amount, RuleContext context, bool belowCounts = true, bool aboveCounts = true)
    {
        LinearForm form = LinearForm.Of(amount);
        if (form.Terms.Count > 0 && form.Bounds() is var (low, high)
            && ((belowCounts && low < input.Resolution * input.Minimum) || (aboveCounts && high > input.Resolution * input.Maximum)))
        {
            context.Report(SignalDiagnostics.ParameterBeyondInstrument(amount, input.Tag, Wording.Amount(low, input.Unit), Wording.Amount(high, input.Unit)));
        }
    }
}
