using Sequencer.Language.Programs;

namespace Sequencer.Export.Writing;

/// <summary>What is left and entered where transitions are taken.</summary>
internal static class StepMoveText
{
    public static void Moves(UnitText unit, string branch, IReadOnlyList<Step> steps, IReadOnlyList<OrderedTransition> transitions)
    {
        TextLines body = unit.Body;
        (Step Step, OrderedTransition[] Own)[] moves =
        [
            .. steps.Select(step => (step, transitions
                .Where(transition => transition.From is [int from] && from == step.Number && !AfterJoin(transition, transitions)).ToArray()))
                .Where(move => move.Item2.Length > 0),
        ];
        if (moves.Length == 0)
        {
            return;
        }

        body.Open($"CASE {branch} OF");
        foreach ((Step step, OrderedTransition[] own) in moves)
        {
            body.Open($"{unit.StepLabel(step)}:");
            for (int index = 0; index < own.Length; index++)
            {
                string line = $"IF {unit.Met(own[index])} THEN";
                if (index == 0)
                {
                    body.Open(line);
                }
                else
                {
                    body.Else("ELS" + line);
                }

                Take(unit, own[index], transitions);
            }

            body.Close("END_IF;");
            body.Leave();
        }

        body.Close("END_CASE;");
    }

    /// <summary>Joins, and the ways out of limits of steps that wait in one, lose against what was taken before.</summary>
    public static void Joins(UnitText unit, IReadOnlyList<OrderedTransition> transitions)
    {
        foreach (OrderedTransition transition in transitions.Where(transition => transition.From.Length > 1 || AfterJoin(transition, transitions)))
        {
            IEnumerable<string> ready = transition.From.Select(step => Ready(unit, step, transition, transitions));
            unit.Body.Trace(transition.Span, $"from {string.Join(", ", transition.From)} together");
            unit.Body.Open($"IF {string.Join(" AND ", ready)} AND {unit.Met(transition)} THEN");
            Take(unit, transition, transitions);
            unit.Body.Close("END_IF;");
        }
    }

    /// <summary>The step was active and no transition taken before has left it.</summary>
    private static string Ready(UnitText unit, int step, OrderedTransition transition, IReadOnlyList<OrderedTransition> transitions)
    {
        return IsContested(step, transition, transitions)
            ? $"{unit.StepAtStart(step)} AND (NOT {Left(unit, step)})"
            : unit.StepAtStart(step);
    }

    /// <summary>A join, or a way out of a limit behind one, may find that the step was left before it: <paramref name="at"/>, or any where null.</summary>
    public static bool IsContested(int step, OrderedTransition? at, IReadOnlyList<OrderedTransition> transitions) => transitions
        .Where(transition => (at is null || transition == at) && transition.From.Contains(step) && (transition.From.Length > 1 || AfterJoin(transition, transitions)))
        .Any(transition => transitions.TakeWhile(earlier => earlier != transition).Any(earlier => earlier.From.Contains(step)));

    public static string Left(UnitText unit, int step) => unit.Scratch(FormattableString.Invariant($"step{step}.left"), "BOOL");

    private static bool AfterJoin(OrderedTransition transition, IReadOnlyList<OrderedTransition> transitions) =>
        transition.When is null && transitions.Any(join => join.From.Length > 1 && join.From.Contains(transition.From[0]));

    private static void Take(UnitText unit, OrderedTransition transition, IReadOnlyList<OrderedTransition> transitions)
    {
        if (transition.AtMost is not null)
        {
            unit.Body.Add($"{TransitionText.Taken(unit, transition)} := TRUE;");
        }

        HashSet<string> entered = [.. transition.To.Select(step => unit.Place(step).Branch)];
        foreach (int step in transition.From)
        {
            if (!entered.Contains(unit.Place(step).Branch))
            {
                Leave(unit, step);
            }

            if (IsContested(step, null, transitions))
            {
                unit.Body.Add($"{Left(unit, step)} := TRUE;");
            }
        }

        foreach (int step in transition.To)
        {
            Enter(unit, step);
        }
    }

    /// <summary>A step that another transition has entered in this scan stays active (IEC 60848).</summary>
    public static void Leave(UnitText unit, int step)
    {
        string left = $"{unit.Place(step).Branch}_Now := {unit.NoStep};";
        bool canBeEnteredBeside = unit.Regions.All(region => region.Count == 1) && unit.Regions.Count > 1;
        unit.Body.Add(canBeEnteredBeside ? $"IF NOT {unit.Entered(step)} THEN {left} END_IF;" : left);
    }

    public static void Enter(UnitText unit, int step)
    {
        (string branch, string value) = unit.Place(step);
        unit.Body.Add($"{branch}_Now := {value};");
        unit.Body.Add($"{unit.Entered(step)} := TRUE;");
    }

    public static void Clear(UnitText unit, ProceduralState state)
    {
        foreach (int region in unit.RegionsOf(state))
        {
            unit.Body.Add($"{UnitText.Branch(region)}_Now := {unit.NoStep};");
        }
    }
}
