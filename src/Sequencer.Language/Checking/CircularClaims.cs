using Sequencer.Language.Binding;
using Sequencer.Language.Programs;
using Sequencer.Language.Rules.Analysis;
using Sequencer.Text;

namespace Sequencer.Language.Checking;

/// <summary>
/// Units that own one equipment while they wait for another, so that each can wait for what the other owns. What one step
/// claims together is asked for in one scan and queues in one order, so that it makes no circle.
/// </summary>
internal static class CircularClaims
{
    public static void Check(IReadOnlyList<(UnitProgram Program, DiagnosticBag Diagnostics)> units)
    {
        List<(UnitProgram Program, DiagnosticBag Diagnostics, string Owned, Claim Wanted)> waits =
            [.. units.SelectMany(unit => Waits(unit.Program).Select(wait => (unit.Program, unit.Diagnostics, wait.Owned, wait.Wanted)))];
        foreach ((UnitProgram program, DiagnosticBag diagnostics, string owned, Claim wanted) in waits)
        {
            HashSet<(string, string)> others = [.. waits.Where(other => other.Program != program).Select(other => (other.Owned, other.Wanted.Equipment))];
            if (LeadsTo(wanted.Equipment, owned, others))
            {
                diagnostics.Add(UnitDiagnostics.CircularClaims(wanted.Span, owned, wanted.Equipment));
            }
        }
    }

    /// <summary>What a unit may own in one step when it begins to wait in the next, in another branch, or anew after a hold.</summary>
    private static IEnumerable<(string Owned, Claim Wanted)> Waits(UnitProgram program)
    {
        if (program.ClaimedEquipment.Take(2).Count() < 2)
        {
            return [];
        }

        StepGraph graph = StepGraph.Of(program);
        StepPairs pairs = Situations.Explore(graph).Pairs;
        IEnumerable<(string, Claim)> kept =
            from way in graph.Ways
            from before in way.From
            from after in way.To
            from owned in graph.Steps[before].Claims
            where graph.Steps[after].Claims.Any(claim => claim.Equipment == owned.Equipment)
            from wanted in graph.Steps[after].Claims
            where graph.Steps[before].Claims.All(claim => claim.Equipment != wanted.Equipment)
            select (owned.Equipment, wanted);
        IEnumerable<(string, Claim)> beside =
            from first in Enumerable.Range(0, graph.Steps.Length)
            from second in Enumerable.Range(0, graph.Steps.Length)
            where first != second && pairs.CanBeTogether(first, second)
            from owned in graph.Steps[first].Claims
            from wanted in graph.Steps[second].Claims
            where owned.Equipment != wanted.Equipment
            select (owned.Equipment, wanted);
        IEnumerable<(string, Claim)> againAfterHold =
            from step in graph.Steps
            from owned in step.Claims.Where(claim => !claim.ReleasedWhileHeld)
            from wanted in step.Claims.Where(claim => claim.ReleasedWhileHeld)
            select (owned.Equipment, wanted);
        return [.. kept.Concat(beside).Concat(againAfterHold).Distinct()];
    }

    private static bool LeadsTo(string from, string to, HashSet<(string Owned, string Wanted)> waits)
    {
        HashSet<string> met = [from];
        Queue<string> open = new([from]);
        while (open.TryDequeue(out string? at))
        {
            if (at == to)
            {
                return true;
            }

            foreach ((_, string wanted) in waits.Where(wait => wait.Owned == at))
            {
                if (met.Add(wanted))
                {
                    open.Enqueue(wanted);
                }
            }
        }

        return false;
    }
}
