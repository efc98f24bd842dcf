using System.Collections.Immutable;

namespace Sequencer.Language.Programs;

/// <summary>
/// The transitions of a unit in the order in which they win over each other: <c>go</c> lines as written,
/// then joins, then the ways out of limits; each with its stable name.
/// </summary>
public static class TransitionOrder
{
    public static ImmutableArray<OrderedTransition> Of(UnitProgram unit)
    {
        ImmutableArray<OrderedTransition>.Builder ordered = ImmutableArray.CreateBuilder<OrderedTransition>();
        Dictionary<string, int> names = new(StringComparer.Ordinal);
        foreach (Transition transition in unit.Transitions.OrderBy(transition => transition.From.Length > 1))
        {
            string from = string.Join('_', transition.From);
            string to = transition.To.IsEmpty ? "finish" : string.Join('_', transition.To);
            string name = $"step{from}.go_{to}";
            int count = CountOf(names, name);
            string unique = count == 1 ? name : FormattableString.Invariant($"{name}.{count}");
            ordered.Add(new OrderedTransition(unique, transition.From, transition.To, transition.When, transition.Span) { AtMost = transition.AtMost });
        }

        foreach (Step step in unit.Steps)
        {
            if (step.Limit.GoTo is { } targets)
            {
                string target = targets.IsEmpty ? "finish" : string.Join('_', targets);
                string name = FormattableString.Invariant($"step{step.Number}.limit_go_{target}");
                ordered.Add(new OrderedTransition(name, [step.Number], targets, null, step.Limit.Span));
            }
        }

        return ordered.ToImmutable();
    }

    private static int CountOf(Dictionary<string, int> names, string name)
    {
        names[name] = names.GetValueOrDefault(name) + 1;
        return names[name];
    }
}
