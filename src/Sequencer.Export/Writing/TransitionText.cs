using Sequencer.Language.Programs;

namespace Sequencer.Export.Writing;

/// <summary>When a transition is met, and how often a way may be taken.</summary>
internal static class TransitionText
{
    /// <summary>Ways with a count, and those above them: whether they are wanted is known before the state is, since one turn too many asks for a reaction.</summary>
    public static void JudgeCounted(UnitText unit)
    {
        TextLines body = unit.Body;
        IReadOnlyList<OrderedTransition> transitions = TransitionOrder.Of(unit.Unit);
        foreach (OrderedTransition transition in transitions.Where(transition => IsJudgedEarly(transition, transitions)))
        {
            string met = unit.Met(transition);
            body.Clause(transition.Span, $"from {string.Join(", ", transition.From)}");
            body.Add($"{met} := {Condition(unit, transition)};");
            if (transition.AtMost is not { } most)
            {
                continue;
            }

            IEnumerable<string> above = transitions.TakeWhile(earlier => earlier != transition)
                .Where(earlier => earlier.From.Any(step => transition.From.Contains(step)))
                .Select(earlier => UnitText.Bracketed([.. earlier.From.Select(unit.StepAtStart), unit.Met(earlier)], "AND", "TRUE"));
            string wanted = UnitText.Bracketed([.. transition.From.Select(unit.StepAtStart), $"(State_At_Start = {StateText.Value(ProceduralState.Running)})", met], "AND", "TRUE");
            string count = Count(unit, transition, most);
            string[] before = [.. above];
            string others = before.Length == 0 ? "" : $" AND (NOT {UnitText.Bracketed(before, "OR", "FALSE")})";
            body.Add(FormattableString.Invariant($"{Over(unit, transition)} := {wanted} AND ({count} >= {most.Most}){others};"));
            body.Add(FormattableString.Invariant($"{met} := {met} AND ({count} < {most.Most});"));
        }
    }

    public static string Over(UnitText unit, OrderedTransition transition) => unit.Scratch($"{transition.Name}.over");

    public static string Taken(UnitText unit, OrderedTransition transition) => unit.Scratch($"{transition.Name}.taken");

    private static string Count(UnitText unit, OrderedTransition transition, WayCount most) =>
        unit.Counter(VariableSection.Retained, $"{transition.Name}.count", most.Most, "times that this way was taken in this batch");

    public static string Condition(UnitText unit, OrderedTransition transition)
    {
        Step owner = unit.StepOf(transition.From[^1]);
        if (transition.When is not { } when)
        {
            return ClaimText.LeadsOn(unit, transition, StepClockText.LimitReached(unit, owner));
        }

        string passed = owner.OnlyIf is null ? "" : $"{StepText.PassedOver(unit, owner)} OR ";
        string condition = passed + unit.Conditions.Surely(when, new ConditionSite(transition.Name, step: owner));
        string advances = owner.IsOfBatch ? StateMachineText.AndAdvances(unit) : "";
        return ClaimText.LeadsOn(unit, transition, advances.Length == 0 ? condition : $"({condition}){advances}");
    }

    public static bool IsJudgedEarly(OrderedTransition transition, IReadOnlyList<OrderedTransition> transitions) => transition.AtMost is not null
        || transitions.SkipWhile(earlier => earlier != transition).Any(later => later.AtMost is not null && later.From.Any(step => transition.From.Contains(step)));

    /// <summary>At the end of the scan.</summary>
    public static void CountWays(UnitText unit)
    {
        foreach (OrderedTransition transition in TransitionOrder.Of(unit.Unit))
        {
            if (transition.AtMost is { } most)
            {
                string count = Count(unit, transition, most);
                string atStart = UnitText.Bracketed(transition.From.Select(unit.StepAtStart), "AND", "TRUE");
                unit.Body.Trace(most.Span, FormattableString.Invariant($"at most {most.Most} times; a restart after the last grants one more"));
                unit.Body.Open($"IF {unit.Names.Of("started")} THEN");
                unit.Body.Add($"{count} := 0;");
                unit.Body.Else($"ELSIF {Taken(unit, transition)} THEN");
                unit.Body.Add(UnitText.CountUp(count, most.Most));
                unit.Body.Else(FormattableString.Invariant($"ELSIF {unit.Names.Of("restarted")} AND {atStart} AND ({count} >= {most.Most}) THEN"));
                unit.Body.Add(FormattableString.Invariant($"{count} := {most.Most - 1};"));
                unit.Body.Close("END_IF;");
            }
        }
    }
}
