using Sequencer.Language.Binding;
using Sequencer.Language.Programs;
using Sequencer.Text;

namespace Sequencer.Language.Checking;

/// <summary>What the units of a site can do wrong with the equipment that they share.</summary>
internal static class SharedRules
{
    /// <param name="units">The programs in the order of the site.</param>
    /// <param name="complete">False where a unit may be missing or could not be bound: it may claim what nobody else does.</param>
    public static void Check(IReadOnlyList<(UnitProgram Program, DiagnosticBag Diagnostics)> units, bool complete)
    {
        Dictionary<string, string> equipmentOf = new(StringComparer.Ordinal);
        foreach ((UnitProgram program, _) in units)
        {
            foreach (SharedEquipment equipment in program.Shared)
            {
                foreach (Output output in equipment.Outputs)
                {
                    equipmentOf[QualifiedName.Of(program.Name, output.Tag)] = QualifiedName.Of(program.Name, equipment.Name);
                }
            }
        }

        foreach ((UnitProgram program, DiagnosticBag diagnostics) in units.Where(unit => !unit.Diagnostics.HasErrors).ToList())
        {
            Steps(program, equipmentOf, diagnostics);
            Rows(program, diagnostics);
        }

        if (complete && units.All(unit => !unit.Diagnostics.HasErrors))
        {
            Claimants(units);
            CircularClaims.Check(units);
        }
    }

    private static void Steps(UnitProgram program, Dictionary<string, string> equipmentOf, DiagnosticBag diagnostics)
    {
        foreach (Step step in program.Steps)
        {
            foreach (Claim claim in step.Claims.Where(_ => !step.IsOfBatch))
            {
                diagnostics.Add(UnitDiagnostics.ClaimOnTheWayToRest(claim.Span, Written(program, claim.Equipment)));
            }

            foreach (StepAction action in step.Actions)
            {
                if (Rules.Analysis.OutputUse.DrivenBy(action) is { } output && equipmentOf.TryGetValue(Full(program, output.Tag), out string? equipment))
                {
                    Drive(program, step, action, output, equipment, diagnostics);
                }
            }
        }
    }

    private static void Drive(UnitProgram program, Step step, StepAction action, Output output, string equipment, DiagnosticBag diagnostics)
    {
        string? mistake = action switch
        {
            DriveAction { OnceABatch: true } => "it has no share of a batch",
            DriveAction => null,
            KeepAction => "a step does not keep it beyond itself",
            _ => "it is driven, not dosed with",
        };
        if (mistake is not null)
        {
            diagnostics.Add(UnitDiagnostics.NotForShared(action.Span, output.Tag, Written(program, equipment), mistake));
        }
        else if (step.Claims.All(claim => claim.Equipment != equipment))
        {
            diagnostics.Add(UnitDiagnostics.DrivenUnclaimed(action.Span, step.Number, output.Tag, Written(program, equipment)));
        }
    }

    /// <summary>Rows of rest that follow the state of one unit, and duty, make no sense for what units take in turns.</summary>
    private static void Rows(UnitProgram program, DiagnosticBag diagnostics)
    {
        foreach (SharedEquipment equipment in program.Shared)
        {
            foreach (Output output in equipment.Outputs)
            {
                string? mistake = output.Held is not null ? "it has no `held` value"
                    : !output.DrivenWhile.IsEmpty ? "no section drives it"
                    : program.Pairs.Any(pair => pair.First.Tag == output.Tag || pair.Second.Tag == output.Tag) ? "it is in no pair"
                    : null;
                if (mistake is not null)
                {
                    diagnostics.Add(UnitDiagnostics.NotForShared(equipment.Span, output.Tag, equipment.Name, mistake));
                }
            }
        }
    }

    private static void Claimants(IReadOnlyList<(UnitProgram Program, DiagnosticBag Diagnostics)> units)
    {
        foreach ((UnitProgram program, DiagnosticBag diagnostics) in units)
        {
            foreach (SharedEquipment equipment in program.Shared)
            {
                int claimants = units.Count(unit => unit.Program.ClaimedEquipment.Contains(QualifiedName.Of(program.Name, equipment.Name)));
                if (claimants < 2)
                {
                    diagnostics.Add(UnitDiagnostics.SharedWithNobody(equipment.Span, equipment.Name, claimants));
                }
            }
        }
    }

    private static string Full(UnitProgram program, string tag) => QualifiedName.IsForeign(tag) ? tag : QualifiedName.Of(program.Name, tag);

    /// <summary>The name as the unit itself writes it.</summary>
    private static string Written(UnitProgram program, string name) =>
        QualifiedName.Split(name) is var (unit, below) && unit == program.Name ? below : name;
}
