using Sequencer.Language.Binding;
using Sequencer.Language.Programs;
using Sequencer.Language.Rules.Analysis;
using Sequencer.Text;

namespace Sequencer.Language.Checking;

/// <summary>What units can do wrong when one starts another: nobody listens, nobody asks, nobody waits for the answer.</summary>
internal static class StartRules
{
    /// <param name="units">The programs in the order of the site.</param>
    /// <param name="complete">False where a unit may be missing or could not be bound: it may ask or listen.</param>
    public static void Check(IReadOnlyList<(UnitProgram Program, DiagnosticBag Diagnostics)> units, bool complete)
    {
        Dictionary<string, UnitProgram> sound = units.Where(unit => !unit.Diagnostics.HasErrors)
            .DistinctBy(unit => unit.Program.Name).ToDictionary(unit => unit.Program.Name, unit => unit.Program, StringComparer.Ordinal);
        foreach ((UnitProgram program, DiagnosticBag diagnostics) in units.Where(unit => !unit.Diagnostics.HasErrors).ToList())
        {
            foreach (Step step in program.Steps)
            {
                Asks(program, step, sound, diagnostics);
            }

            foreach (Asker asker in program.Askers)
            {
                if (complete && sound.TryGetValue(asker.Unit, out UnitProgram? other) && !other.AskedUnits.Contains(program.Name))
                {
                    diagnostics.Add(UnitDiagnostics.AskedByNoStep(asker.Span, asker.Unit, program.Name));
                }
            }

            HashSet<string> asked = [.. program.AskedUnits];
            foreach (StartedFact started in ConditionPlace.All(program).SelectMany(place => ConditionTree.Parts(place.Condition)).OfType<StartedFact>())
            {
                if (!asked.Contains(started.Unit))
                {
                    diagnostics.Add(UnitDiagnostics.StartedUnasked(started.Span, started.Unit));
                }
            }
        }
    }

    private static void Asks(UnitProgram program, Step step, Dictionary<string, UnitProgram> sound, DiagnosticBag diagnostics)
    {
        foreach (Ask ask in step.Asks)
        {
            if (sound.TryGetValue(ask.Unit, out UnitProgram? other) && other.Askers.All(asker => asker.Unit != program.Name))
            {
                diagnostics.Add(UnitDiagnostics.NotAskedBy(ask.Span, ask.Unit, program.Name));
            }
            else if (!step.IsOfBatch)
            {
                diagnostics.Add(UnitDiagnostics.AskOnTheWayToRest(ask.Span, ask.Unit));
            }
            else if (!Ways(program, step).Any(way => ConditionTree.Parts(way.When).OfType<StartedFact>().Any(started => started.Unit == ask.Unit)))
            {
                diagnostics.Add(UnitDiagnostics.AnswerNotAwaited(ask.Span, step.Number, ask.Unit));
            }
        }
    }

    private static IEnumerable<Transition> Ways(UnitProgram program, Step step) => program.Transitions.Where(transition => transition.From.Contains(step.Number));
}
