using Sequencer.Language.Programs;
using Sequencer.Language.Rules.Analysis;

namespace Sequencer.Language.Rules.Protections;

/// <summary>A device without <c>confirm</c>, beside a switch that by its tag shows its state (<c>ZSO</c> of a valve, <c>YS</c> of a motor, the same number) and that confirms nothing. A switch that nothing reads has a message of its own.</summary>
internal sealed class SwitchWithoutDiscrepancyRule : IProgramRule
{
    public void Check(UnitProgram program, RuleContext context)
    {
        HashSet<string> confirming = [.. program.Outputs.Select(output => output.Confirmation).OfType<Confirmation>()
            .SelectMany(confirmation => new[] { confirmation.On, confirmation.Off }).OfType<SwitchInput>().Select(input => input.Tag)];
        HashSet<string> read = [.. context.Facts(program).Conditions.SelectMany(place => ConditionTree.InputTags(place.Condition))];
        foreach (Output output in program.Outputs.Where(output => output.Confirmation is null))
        {
            SwitchInput? shown = program.SwitchInputs.FirstOrDefault(input => read.Contains(input.Tag) && !confirming.Contains(input.Tag) && TagLetters.ShowsStateOf(input.Tag, output.Tag, output.Kind));
            if (shown is not null)
            {
                context.Report(EquipmentDiagnostics.SwitchWithoutDiscrepancy(output, shown));
            }
        }
    }
}
