using System.Collections.Immutable;
using Sequencer.Language.Programs;

namespace Sequencer.Language.Rules.Analysis;

/// <summary>Which outputs anything can switch on: a step that demands it, or its own value at rest.</summary>
internal sealed class OutputUse
{
    private readonly HashSet<string> _demanded;

    private OutputUse(HashSet<string> demanded) => _demanded = demanded;

    public static OutputUse Of(UnitProgram program) => new(
    [
        .. program.Steps.SelectMany(step => step.Actions).Where(SwitchesOn).Select(DrivenBy).OfType<Output>().Select(output => output.Tag),
        .. program.Shared.SelectMany(equipment => equipment.Outputs).Select(output => output.Tag),
    ]);

    /// <summary>Some step, of another unit where it is shared, runs, opens or doses with it.</summary>
    public bool IsDemanded(Output output) => _demanded.Contains(output.Tag);

    /// <summary>Some step demands it, or a value at rest may be on.</summary>
    public bool CanBeOn(Output output) => IsDemanded(output) || RestValues(output).Any(CanBeOn);

    public static bool CanBeOn(RestValue rest) =>
        !rest.Last && (rest.Value || (rest.While is not null && (rest.Otherwise || rest.IfBad)));

    public static ImmutableArray<RestValue> RestValues(Output output) =>
        [.. new[] { output.Safe, output.Emergency, output.Held }.OfType<RestValue>().Distinct(ReferenceEqualityComparer.Instance).Cast<RestValue>()];

    /// <summary>Null where the action drives no valve and no motor.</summary>
    public static Output? DrivenBy(StepAction action) => action switch
    {
        DriveAction drive => drive.Output,
        DoseAction dose => dose.Output,
        AmountDoseAction dose => dose.Output,
        KeepAction keep => keep.Output,
        _ => null,
    };

    public static bool Doses(StepAction action) => action is DoseAction or AmountDoseAction;

    public static bool SwitchesOn(StepAction action) => Doses(action) || action is DriveAction { On: true } or KeepAction { On: true };

    /// <summary>The output doses a chemical: one that moves a reading or that opposes another.</summary>
    public static bool DosesChemical(Output output, ImmutableArray<Reagent> reagents) =>
        output.Delivery?.Reagent is { } reagent
        && (reagent.Effect is not null || !reagent.Opposes.IsEmpty || reagents.Any(other => other.Opposes.Contains(reagent.Name)));
}
