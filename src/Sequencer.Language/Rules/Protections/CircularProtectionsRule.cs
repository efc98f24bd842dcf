using Sequencer.Language.Programs;
using Sequencer.Language.Rules.Analysis;

namespace Sequencer.Language.Rules.Protections;

/// <summary>
/// Interlocks, permissives and exclusions by which what an output does in a scan would depend on itself: they see the outputs of
/// the same scan.
/// </summary>
internal sealed class CircularProtectionsRule : IProgramRule
{
    public void Check(UnitProgram program, RuleContext context)
    {
        Dictionary<string, HashSet<string>> looksAt = new(StringComparer.Ordinal);
        foreach (Exclusion exclusion in program.Exclusions)
        {
            for (int later = 1; later < exclusion.Outputs.Length; later++)
            {
                Of(exclusion.Outputs[later].Tag).UnionWith(exclusion.Outputs.Take(later).Select(earlier => earlier.Tag));
            }
        }

        IEnumerable<(string Name, IEnumerable<Output> Outputs, Condition Condition)> protections =
        [
            .. program.Interlocks.Select(one => (one.Name, one.Outputs.AsEnumerable(), one.Condition)),
            .. program.Interlocks.Where(one => one.Release is not null).Select(one => (one.Name, one.Outputs.AsEnumerable(), one.Release!)),
            .. program.Permissives.Select(one => (one.Name, one.Outputs.AsEnumerable(), one.Condition)),
        ];
        foreach ((string name, IEnumerable<Output> outputs, Condition condition) in protections)
        {
            OutputFact[] seen = [.. ConditionTree.Parts(condition).OfType<OutputFact>().Where(fact => fact.Kind != OutputFactKind.Failed)];
            if (seen.FirstOrDefault(fact => outputs.Any(output => Reaches(fact.Output.Tag, output.Tag))) is { } closing)
            {
                Output output = outputs.First(output => Reaches(closing.Output.Tag, output.Tag));
                context.Report(ProtectionDiagnostics.ProtectionsInCircle(closing.Span, name, output, closing.Output));
                continue;
            }

            foreach (Output output in outputs)
            {
                Of(output.Tag).UnionWith(seen.Select(fact => fact.Output.Tag));
            }
        }

        HashSet<string> Of(string tag) => looksAt.TryGetValue(tag, out HashSet<string>? tags) ? tags : looksAt[tag] = new(StringComparer.Ordinal);

        bool Reaches(string from, string to)
        {
            HashSet<string> known = new(StringComparer.Ordinal) { from };
            Stack<string> open = new([from]);
            while (open.TryPop(out string? tag))
            {
                if (tag == to)
                {
                    return true;
                }

                foreach (string next in looksAt.TryGetValue(tag, out HashSet<string>? tags) ? tags.Where(known.Add).ToArray() : [])
                {
                    open.Push(next);
                }
            }

            return false;
        }
    }
}
