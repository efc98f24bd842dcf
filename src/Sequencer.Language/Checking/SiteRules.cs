using Sequencer.Language.Binding;
using Sequencer.Language.Programs;
using Sequencer.Language.Rules.Analysis;
using Sequencer.Text;

namespace Sequencer.Language.Checking;

/// <summary>What only all programs of a site together can do wrong; told in the file of the later one.</summary>
internal static class SiteRules
{
    public static void Check(IReadOnlyList<(UnitProgram Program, DiagnosticBag Diagnostics)> units)
    {
        Tags(units);
        Addresses(units);
        CircularFacts(units);
    }

    /// <summary>Tags are the plant's; the controller does not tell cases apart.</summary>
    private static void Tags(IReadOnlyList<(UnitProgram Program, DiagnosticBag Diagnostics)> units)
    {
        Dictionary<string, (UnitProgram Program, SourceSpan Span)> first = new(StringComparer.OrdinalIgnoreCase);
        foreach ((UnitProgram program, DiagnosticBag diagnostics) in units)
        {
            IEnumerable<(string Tag, SourceSpan Span)> tags =
            [
                .. program.AnalogueInputs.Select(input => (input.Tag, input.Span)),
                .. program.SwitchInputs.Select(input => (input.Tag, input.Span)),
                .. program.Outputs.Select(output => (output.Tag, output.Span)),
            ];
            foreach ((string tag, SourceSpan span) in tags)
            {
                if (!first.TryAdd(tag, (program, span)) && first[tag].Program != program)
                {
                    diagnostics.Add(UnitDiagnostics.TagOfTwoUnits(span, tag, first[tag].Span));
                }
            }
        }
    }

    private static void Addresses(IReadOnlyList<(UnitProgram Program, DiagnosticBag Diagnostics)> units)
    {
        Dictionary<string, (UnitProgram Program, SourceSpan Span)> first = new(StringComparer.Ordinal);
        foreach ((UnitProgram program, DiagnosticBag diagnostics) in units)
        {
            IEnumerable<DirectAddress> addresses =
            [
                .. program.AnalogueInputs.Select(input => input.Address),
                .. program.SwitchInputs.Select(input => input.Address),
                .. program.Outputs.Select(output => output.Address),
            ];
            foreach (DirectAddress address in addresses)
            {
                if (!first.TryAdd(address.ToString(), (program, address.Span)) && first[address.ToString()].Program != program)
                {
                    diagnostics.Add(NameDiagnostics.AddressTwice(address.Span, address.ToString(), first[address.ToString()].Span));
                }
            }
        }
    }

    private static void CircularFacts(IReadOnlyList<(UnitProgram Program, DiagnosticBag Diagnostics)> units)
    {
        Dictionary<string, string[]> named = new(StringComparer.Ordinal);
        foreach ((UnitProgram program, _) in units)
        {
            foreach (PublishedFact fact in program.Facts)
            {
                named[QualifiedName.Of(program.Name, fact.Name)] =
                [
                    .. ConditionTree.Parts(fact.Condition).OfType<NamedFact>()
                        .Select(other => QualifiedName.IsForeign(other.Fact) ? other.Fact : QualifiedName.Of(program.Name, other.Fact)),
                ];
            }
        }

        foreach ((UnitProgram program, DiagnosticBag diagnostics) in units)
        {
            foreach (PublishedFact fact in program.Facts.Where(fact => LeadsBack(QualifiedName.Of(program.Name, fact.Name), named)))
            {
                diagnostics.Add(UnitDiagnostics.CircularFacts(fact.Span, fact.Name));
            }
        }
    }

    private static bool LeadsBack(string fact, Dictionary<string, string[]> named)
    {
        HashSet<string> met = new(StringComparer.Ordinal);
        Stack<string> open = new(named[fact]);
        while (open.TryPop(out string? next))
        {
            if (next == fact)
            {
                return true;
            }

            if (met.Add(next) && named.TryGetValue(next, out string[]? others))
            {
                Array.ForEach(others, open.Push);
            }
        }

        return false;
    }
}
