using Sequencer.Language.Binding;
using Sequencer.Language.Programs;
using Sequencer.Language.Rules.Analysis;

namespace Sequencer.Language.Rules.Protections;

/// <summary>A count that no condition and no record reads.</summary>
internal sealed class CountNeverReadRule : IProgramRule
{
    public void Check(UnitProgram program, RuleContext context)
    {
        if (program.Counts.IsEmpty)
        {
            return;
        }

        IEnumerable<Quantity> records = program.Steps.SelectMany(step => step.Actions).OfType<RecordAction>().Select(record => record.Value);
        HashSet<string> read = new(
            context.Facts(program).Conditions.SelectMany(place => ConditionTree.Amounts(place.Condition)).Concat(records).OfType<CountQuantity>().Select(count => count.Count.Name),
            StringComparer.Ordinal);
        foreach (Count count in program.Counts.Where(count => !read.Contains(count.Name) && !context.ReadElsewhere.Contains(count.Name)))
        {
            context.Report(CountDiagnostics.NeverRead(count.Span, count.Name));
        }
    }
}
