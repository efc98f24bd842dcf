using System.Collections.Immutable;
using Sequencer.Language.Programs;
using Sequencer.Language.Rules.Analysis;

namespace Sequencer.Language.Rules.Protections;

/// <summary>An input that no condition, dose, confirmation or assumption looks at.</summary>
internal sealed class InputNeverReadRule : IProgramRule
{
    public void Check(UnitProgram program, RuleContext context)
    {
        HashSet<string> read = new(Read(program, context.Facts(program).Conditions), StringComparer.Ordinal);
        foreach (AnalogueInput input in program.AnalogueInputs)
        {
            if (!read.Contains(input.Tag) && !context.ReadElsewhere.Contains(input.Tag))
            {
                context.Report(SignalDiagnostics.InputNeverRead(input.Span, input.Tag));
            }
        }

        foreach (SwitchInput input in program.SwitchInputs)
        {
            if (!read.Contains(input.Tag) && !context.ReadElsewhere.Contains(input.Tag))
            {
                context.Report(SignalDiagnostics.InputNeverRead(input.Span, input.Tag));
            }
        }
    }

    private static IEnumerable<string> Read(UnitProgram program, ImmutableArray<ConditionPlace> conditions) =>
    [
        .. conditions.SelectMany(place => ConditionTree.InputTags(place.Condition)),
        .. program.Outputs.Select(output => output.Confirmation).OfType<Confirmation>()
            .SelectMany(confirmation => new[] { confirmation.On, confirmation.Off }).OfType<SwitchInput>().Select(input => input.Tag),
        .. program.Assumptions.Select(assumption => assumption.Fact).OfType<AssumedRate>().Select(rate => rate.Input.Tag),
        .. program.Reals.Select(real => real.Input.Tag),
        .. program.Steps.SelectMany(step => step.Actions).OfType<DoseAction>().Select(dose => dose.Signal.Tag),
        .. program.Steps.SelectMany(step => step.Actions).OfType<AmountDoseAction>().Select(dose => dose.Of).OfType<ReadingQuantity>().Select(basis => basis.Input.Tag),
        .. program.Steps.SelectMany(step => step.Actions).OfType<RecordAction>().Select(record => record.Value).OfType<ReadingQuantity>().Select(value => value.Input.Tag),
    ];
}
